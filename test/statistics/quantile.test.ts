import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { quantile } from '../../src/statistics/quantile.ts';
import { expectNear } from './near.ts';

describe('statistics/quantile', () => {
  // Hyndman & Fan's definition 7; values of NumPy's method "linear" (the same definition).
  test.each([
    [0.1, 3.8],
    [0.25, 4.25],
    [0.75, 11.75],
    [0.9, 17.2],
    [0.95, 18.1],
  ])('ten numbers, p = %d', (p, expected) => {
    expectNear(quantile([19, 2, 9, 4, 12, 5, 4, 7, 17, 11], p), expected, 1e-15);
  });

  test('hand-size samples', () => {
    expect(quantile([4, 1, 3, 2], 0.25)).toBe(1.75);
    expect(quantile([1, 2, 3, 4, 5, 6, 7, 8, 9, 10], 0.25)).toBe(3.25);
    expectNear(quantile([1, 2, 3, 4, 5, 6, 7, 8, 9, 10], 0.9), 9.1, 1e-15);
    expect(quantile([7], 0.3)).toBe(7);
  });

  test('selection agrees with sorting, and leaves the values alone', () => {
    const numbers = fc.array(fc.integer({ min: -5, max: 5 }), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(numbers, fc.double({ min: 0, max: 1, noNaN: true }), (values, p) => {
        const sorted = [...values].sort((a, b) => a - b);
        const h = (values.length - 1) * p;
        const below = sorted[Math.floor(h)]!;
        const above = sorted[Math.ceil(h)]!;
        const before = [...values];
        expect(Math.abs(quantile(values, p) - (below + (h - Math.floor(h)) * (above - below)))).toBeLessThan(1e-12);
        expect(values).toEqual(before);
      }),
      { seed: 1 },
    );
  });

  test('no values, p out of range, a number that is none: refused', () => {
    expect(() => quantile([], 0.5)).toThrow('found no values');
    expect(() => quantile([1], 1.5)).toThrow('p is 1.5');
    expect(() => quantile([1, Number.NaN], 0.5)).toThrow('values[1] is NaN');
  });
});
