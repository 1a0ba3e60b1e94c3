import { describe, expect, test } from 'vitest';
import { grubbs } from '../../src/statistics/grubbs.ts';
import { normalQuantile } from '../../src/statistics/normal-quantile.ts';
import { seededRandom } from './seeded-random.ts';

describe('statistics/grubbs', () => {
  // Critical values of F. E. Grubbs and G. Beck, Technometrics 14, 1972: 2.5 % on one side is 5 % on both (read in a secondary table).
  test.each([
    [3, 1.15],
    [4, 1.48],
    [5, 1.71],
    [8, 2.13],
    [10, 2.29],
  ])('the critical value of %i values', (n, critical) => {
    const values = Array.from({ length: n }, (_, k) => k);
    expect(grubbs(values, 0.05)!.critical).toBeCloseTo(critical, 1.9);
  });

  // The mass spectrometer of NIST/SEMATECH e-Handbook, 1.3.5.17.1 (data from memory): G = 2.4687, the last value.
  test('eight measurements of which one is far away', () => {
    const found = grubbs([199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57], 0.05)!;
    expect(found.at).toBe(7);
    expect(found.distance).toBeCloseTo(2.4687, 3);
    expect(found.distance).toBeGreaterThan(found.critical);
  });

  test('names one where there is none in one of a hundred samples', () => {
    const random = seededRandom(9);
    let named = 0;
    for (let turn = 0; turn < 4000; turn++) {
      const values = Array.from({ length: 5 }, () => normalQuantile(random() || 0.5));
      const { distance, critical } = grubbs(values, 0.01)!;
      if (distance > critical) named++;
    }
    expect(named / 4000).toBeGreaterThan(0.005);
    expect(named / 4000).toBeLessThan(0.015);
  });

  test('equal values have none; too few, or no level, is an error', () => {
    expect(grubbs([2, 2, 2], 0.05)).toBeNull();
    expect(() => grubbs([1, 2], 0.05)).toThrow(RangeError);
    expect(() => grubbs([1, 2, 3], 1)).toThrow(RangeError);
  });
});
