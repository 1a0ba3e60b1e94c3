import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { random } from '../../simulator/random.ts';
import { contextOf, every, logOf, phase, presentAt } from '../build.ts';

describe('figures/power/percentile', () => {
  test('a ramp of 4 to 8 W, shuffled, was not above 7.8 W in 95 % of the time; absent without a load phase', () => {
    const board = { quantity: 'power' as const, values: (t: number) => 4 + ((t * 937) % 2000) / 500 };
    const log = logOf(every(1, 1999), { board });
    const { figures } = derive(log, contextOf({ phases: [phase('load', 0, 2000)] }));
    const { quantity, interval } = presentAt(figures, 'power_percentile_95');
    expect(Math.abs(quantity.value - 7.8)).toBeLessThan(0.005);
    expect(interval![0]).toBeLessThan(7.8);
    expect(interval![1]).toBeGreaterThan(7.8);
    const idle = derive(log, contextOf({ phases: [phase('idle', 0, 2000)] }));
    expect(idle.figures.get('power_percentile_95')).toMatchObject({ absent: 'no-phase' });
  });

  // Idle scatters by 0.02 W at 2 W, so that a meter whose noise grows with its reading has at most 0.08 W at 8 W; the load scatters by 1 W.
  test('noise of the meter opens the interval downwards, and the idle phase tells how far at most', () => {
    const chance = random(3);
    const board = {
      quantity: 'power' as const,
      values: (t: number) => (t < 600 ? 2 + 0.02 * chance.normal() : 8 + chance.normal()),
      step: 0.001,
    };
    const log = logOf(every(1, 3599), { board });
    const load = phase('load', 600, 3600);
    const [alone, beside] = [[load], [phase('idle', 0, 600), load]].map((phases) => {
      const { interval, quantity } = presentAt(derive(log, contextOf({ phases })).figures, 'power_percentile_95');
      return quantity.value - interval![0];
    });
    // 1.64 standard deviations of what may be noise: 1 W, or 0.08 W.
    expect(alone! - beside!).toBeGreaterThan(1.64 * (1 - 0.08) * 0.9);
    expect(beside!).toBeGreaterThan(1.64 * 0.08 * 0.9);
    expect(beside!).toBeLessThan(0.3);
  });

  test('of a constant 8 W whose meter scatters and is refreshed each second row, 8 W stays inside', () => {
    const chance = random(5);
    const fresh = Array.from({ length: 900 }, () => 8 + 0.1 * chance.normal());
    const board = { quantity: 'power' as const, values: (t: number) => fresh[Math.floor(t / 2)]!, step: 0.001 };
    const { figures } = derive(logOf(every(1, 1799), { board }), contextOf({ phases: [phase('load', 0, 1800)] }));
    expect(presentAt(figures, 'power_percentile_95').interval![0]).toBeLessThan(8);
  });
});
