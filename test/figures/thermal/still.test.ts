/** How far a steady temperature is said to be from its end: 22 °C and 40·(1 − exp(−t/600)) K, closed form. */
import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { random } from '../../simulator/random.ts';
import { contextOf, every, logOf, phase, presentAt, stepAt } from '../build.ts';

const said = (load: number, more: Parameters<typeof logOf>[1] = {}) => {
  const chance = random(load);
  const log = logOf(every(1, load), {
    soc: { quantity: 'temperature', values: (t) => stepAt(t) + 0.05 * chance.normal() },
    ...more,
  });
  return String(presentAt(derive(log, contextOf({ phases: [phase('load', 0, load)] })).figures, 'steady_temperature').of?.still);
};

describe('figures/thermal/still', () => {
  test('a load that ended soon after it counted as settled says how much higher the fitted end is', () => {
    const [low, high] = /^the fitted end is ([\d.]+) K to ([\d.]+) K higher$/.exec(said(3000))!.slice(1).map(Number);
    const steady = (600 * 40 * (Math.exp(-2100 / 600) - Math.exp(-3000 / 600))) / 900;
    expect(low).toBeLessThan(steady);
    expect(high).toBeGreaterThan(steady);
    expect(high! - low!).toBeLessThan(0.5);
  });

  test('a load of 18 time constants is at its end', () => {
    expect(Number(/^the fitted end is at most ([\d.]+) K away$/.exec(said(10_800))![1])).toBeLessThan(0.1);
  });

  test('where the load changed there is no fit: the slope of the last window is said', () => {
    const power = { quantity: 'power', values: (t: number) => (t < 1500 ? 14 : 10) } as const;
    const [low, high] = /^still rising by ([\d.]+) K to ([\d.]+) K per hour$/
      .exec(said(3000, { meter: power }))!
      .slice(1)
      .map(Number);
    const average = ((stepAt(3000) - stepAt(2100)) / 900) * 3600;
    expect(low).toBeLessThan(average);
    expect(high).toBeGreaterThan(average);
  });
});
