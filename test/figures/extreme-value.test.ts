import { describe, expect, test } from 'vitest';
import { extremeValue } from '../../src/figures/extreme-value.ts';
import { scatterOf } from '../../src/figures/scatter.ts';
import { apart, noise } from './build.ts';

/** Normal deviates with standard deviation 1, as sums of twelve uniform ones (common practice, no source). */
function normal(n: number, seed: number): Float64Array {
  const random = noise(seed);
  return Float64Array.from({ length: n }, () => Array.from({ length: 12 }, random).reduce((sum, value) => sum + value, 0));
}

describe('scatter of single readings', () => {
  test('of independent noise is its standard deviation', () => {
    expect(apart(scatterOf(normal(20_000, 1)).deviation, 1)).toBeLessThan(0.03);
  });

  test('does not count a straight course', () => {
    const line = Float64Array.from({ length: 1000 }, (_, i) => 5 * i);
    expect(scatterOf(line)).toEqual({ deviation: 0, largest: 5 });
    const noisy = normal(20_000, 2).map((value, i) => value + i);
    expect(apart(scatterOf(noisy).deviation, 1)).toBeLessThan(0.03);
  });

  test('by hand: 0 3 0 has a second difference of −6, so 6/√6', () => {
    expect(apart(scatterOf(Float64Array.of(0, 3, 0)).deviation, Math.sqrt(6))).toBeLessThan(1e-12);
  });

  test('of one or two readings is not told', () => {
    expect(scatterOf(Float64Array.of(1, 4))).toEqual({ deviation: 0, largest: 3 });
    expect(scatterOf(Float64Array.of(1))).toEqual({ deviation: 0, largest: 0 });
  });
});

describe('extremes', () => {
  test('noise lifts the largest of many readings by about what is allowed for', () => {
    for (const seed of [3, 4, 5, 6]) {
      const { value, lifted } = extremeValue(normal(2000, seed), 'highest', 0);
      expect(value).toBeGreaterThan(2);
      expect(value - lifted).toBeLessThan(1.96);
      expect(lifted).toBeLessThan(4.1);
    }
  });

  test('a lone spike competes with nobody', () => {
    const y = new Float64Array(1000).fill(10);
    y[500] = 40;
    expect(extremeValue(y, 'highest', 0)).toMatchObject({ value: 40, lifted: 0, beyond: 15 });
  });

  test('the step of the sensor is the least uncertainty', () => {
    expect(extremeValue(new Float64Array(10).fill(50), 'lowest', 0.5)).toMatchObject({
      value: 50,
      u: 0.5 / Math.sqrt(12),
      dof: null,
    });
  });
});
