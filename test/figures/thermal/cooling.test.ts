/** The cool-down after a load: closed forms of one and of two exponentials that fall. */
import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { quantise } from '../../simulator/noise.ts';
import { random } from '../../simulator/random.ts';
import { contextOf, every, logOf, phase, presentAt } from '../build.ts';

const LOAD = 3600;
const END = 7200;
const PHASES = [phase('load', 0, LOAD), phase('cool-down', LOAD, END)];

/** Warms by 40 K, and falls from there by parts with these time constants. */
function course(parts: readonly (readonly [number, number])[]): (t: number) => number {
  return (t) =>
    t < LOAD
      ? 62 - 40 * Math.exp(-t / 300)
      : 22 + parts.reduce((sum, [height, constant]) => sum + height * Math.exp(-(t - LOAD) / constant), 0);
}

function figuresOf(values: (t: number) => number, power: ((t: number) => number) | null = null, step = 0) {
  const log = logOf(every(5, END), {
    soc: { quantity: 'temperature', values, step },
    ...(power ? { meter: { quantity: 'power', values: power } } : {}),
  });
  return derive(log, contextOf({ phases: PHASES })).figures;
}

describe('cool-down time constant', () => {
  test('of an exact exponential is its own, whatever that under load was', () => {
    const figures = figuresOf(course([[40, 420]]));
    expect(presentAt(figures, 'cooling_time_constant').quantity.value).toBeCloseTo(420, 4);
    expect(presentAt(figures, 'time_constant').quantity.value).toBeCloseTo(300, 2);
  });

  test('of two is that of the larger part', () => {
    const { quantity, of } = presentAt(
      figuresOf(
        course([
          [30, 420],
          [10, 40],
        ]),
      ),
      'cooling_time_constant',
    );
    expect(quantity.value).toBeCloseTo(420, 2);
    expect(of).toMatchObject({ channel: 'soc', fit: expect.stringContaining('two exponentials') });
  });

  test('holds the truth in 26 of 30 seeds or more, on a sensor with steps of 0.5 K and as much noise', () => {
    let held = 0;
    for (let seed = 1; seed <= 30; seed++) {
      const chance = random(seed);
      const clean = course([[40, 420]]);
      const offset = chance.uniform() / 2;
      const { interval } = presentAt(
        figuresOf((t) => quantise(clean(t) + offset + 0.5 * chance.normal(), 0.5), null, 0.5),
        'cooling_time_constant',
      );
      if (interval![0] <= 420 && 420 <= interval![1]) held++;
    }
    expect(held).toBeGreaterThanOrEqual(26);
  });

  test('is absent without the phase, where the phase is short, and where the device worked on', () => {
    const values = course([[40, 420]]);
    const log = logOf(every(5, LOAD), { soc: { quantity: 'temperature', values } });
    const { figures } = derive(log, contextOf({ phases: [phase('load', 0, LOAD)] }));
    expect(figures.get('cooling_time_constant')).toMatchObject({ absent: 'no-phase' });
    expect(figuresOf(course([[40, 3000]])).get('cooling_time_constant')).toMatchObject({
      absent: expect.stringMatching(/too-short|no-fit/),
    });
    const worked = figuresOf(values, (t) => (t < LOAD ? 8 : t < LOAD + 1200 ? 2 : 5));
    expect(worked.get('cooling_time_constant')).toMatchObject({
      absent: 'load-changed',
      why: expect.stringContaining('did not rest after the load'),
    });
    const rested = figuresOf(values, (t) => (t < LOAD ? 8 : 2));
    expect(presentAt(rested, 'cooling_time_constant').quantity.value).toBeCloseTo(420, 4);
  });
});
