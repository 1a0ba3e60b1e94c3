import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
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
});
