/** Runs from a battery: closed forms, and levels in steps of a per cent. */
import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { random } from '../../simulator/random.ts';
import { contextOf, every, logOf, phase, presentAt } from '../build.ts';

const HOUR = 3600;

/** A load of an hour at 10 W that takes a share of the charge. */
function figuresOf(share: number, { step = 0, from = 1, watts = 10 } = {}) {
  const level = (t: number) => from - (share * t) / HOUR;
  const log = logOf(every(5, HOUR), {
    cell: { quantity: 'power', values: () => watts, at: 'battery' },
    level: { quantity: 'charge_level', values: (t) => (step > 0 ? Math.round(level(t) / step) * step : level(t)), step },
  });
  return derive(log, contextOf({ phases: [phase('load', 0, HOUR)] })).figures;
}

describe('figures of a battery', () => {
  test('10 W for an hour that take a fifth of the charge: 10 Wh, five hours, 50 Wh', () => {
    const figures = figuresOf(0.2);
    expect(presentAt(figures, 'battery_energy').quantity).toMatchObject({ unit: 'J' });
    expect(presentAt(figures, 'battery_energy').quantity.value).toBeCloseTo(10 * HOUR, 6);
    expect(presentAt(figures, 'battery_runtime').quantity.value).toBeCloseTo(5 * HOUR, 6);
    expect(presentAt(figures, 'battery_capacity').quantity.value).toBeCloseTo(50 * HOUR, 3);
  });

  test('a level in steps of 1 %: the interval of the runtime holds the truth in 93 of 100 or more, and is no wider than a sixth of it', () => {
    let held = 0;
    for (let seed = 1; seed <= 100; seed++) {
      const chance = random(seed);
      const share = 0.2 + 0.4 * chance.uniform();
      const { interval } = presentAt(figuresOf(share, { step: 0.01, from: 1 - 0.1 * chance.uniform() }), 'battery_runtime');
      const truth = HOUR / share;
      if (interval![0] <= truth && truth <= interval![1]) held++;
      expect(interval![1] - interval![0]).toBeLessThan(truth / 3);
    }
    expect(held).toBeGreaterThanOrEqual(93);
  });

  test('are absent with the reason', () => {
    expect(figuresOf(0.05).get('battery_runtime')).toMatchObject({
      absent: 'too-short',
      why: 'The level level fell by 5 % under load; it takes 10 % to tell a whole charge.',
    });
    expect(figuresOf(0.2, { watts: -10 }).get('battery_energy')).toMatchObject({ absent: 'out-of-range' });
    const { figures } = derive(logOf(every(5, HOUR), {}), contextOf({ phases: [phase('load', 0, HOUR)] }));
    expect(figures.get('battery_energy')).toMatchObject({ absent: 'no-channel' });
    expect(figures.get('battery_capacity')).toMatchObject({ absent: 'no-channel' });
    expect(derive(logOf(every(5, HOUR), {}), contextOf({ phases: [] })).figures.get('battery_runtime')).toMatchObject({
      absent: 'no-phase',
    });
  });
});
