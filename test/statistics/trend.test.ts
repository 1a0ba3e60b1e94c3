import { describe, expect, test } from 'vitest';
import { trend } from '../../src/statistics/trend.ts';
import { wandering } from '../simulator/noise.ts';
import { random } from '../simulator/random.ts';

describe('trend', () => {
  test('a straight line is told exactly, with its value at the end', () => {
    const t = Float64Array.from({ length: 100 }, (_, i) => 5 * i);
    expect(
      trend(
        t,
        t.map((at) => 3 - 0.25 * at),
      ),
    ).toMatchObject({ slope: -0.25, end: 3 - 0.25 * 495, u: 0 });
  });

  test('the slope of independent noise has the textbook uncertainty σ/√Σ(t − t̄)² (JCGM 100:2008, H.3)', () => {
    const n = 400;
    const t = Float64Array.from({ length: n }, (_, i) => i);
    const expected = 1 / Math.sqrt((n * (n * n - 1)) / 12);
    const found = Array.from({ length: 40 }, (_, seed) => {
      const chance = random(seed);
      return trend(
        t,
        t.map(() => chance.normal()),
      );
    });
    const spread = Math.sqrt(found.reduce((sum, { slope }) => sum + slope ** 2, 0) / found.length);
    const told = found.reduce((sum, { u }) => sum + u, 0) / found.length;
    expect(spread / expected).toBeGreaterThan(0.75);
    expect(spread / expected).toBeLessThan(1.25);
    expect(told / expected).toBeGreaterThan(0.95);
    expect(told / expected).toBeLessThan(1.6);
  });

  test('noise with a memory seldom passes for a slope of four uncertainties', () => {
    const t = Float64Array.from({ length: 900 }, (_, i) => i);
    let passed = 0;
    for (let seed = 0; seed < 200; seed++) {
      const noise = wandering(random(seed), 1, 60, 1);
      const { slope, u } = trend(
        t,
        t.map(() => noise()),
      );
      if (slope > 4 * u) passed++;
    }
    expect(passed).toBeLessThanOrEqual(6);
  });

  test('one instant has no slope, and three readings tell nothing of its uncertainty', () => {
    expect(trend([1, 1, 1, 1], [1, 2, 3, 4])).toMatchObject({ slope: 0, u: Number.NaN });
    expect(trend([0, 1, 2], [1, 2, 3])).toMatchObject({ slope: 1, u: Number.NaN });
  });

  test('refuses unequal lengths', () => {
    expect(() => trend([0, 1], [0])).toThrow(RangeError);
  });
});
