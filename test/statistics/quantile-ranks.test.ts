import { describe, expect, test } from 'vitest';
import { quantileRanks } from '../../src/statistics/quantile-ranks.ts';

describe('statistics/quantile-ranks', () => {
  // Sums of binomial coefficients: of ten values, P(X ≤ 1) = 11/1024 and P(X ≤ 2) = 56/1024, so that ranks 2 and 9 hold 97.9 %.
  test('the median of ten values lies from the second to the ninth', () => {
    expect(quantileRanks(10, 0.5)).toEqual({ low: 2, high: 9 });
  });

  test('the fewest values that leave 2.5 % beyond: ln 0.025 / ln 0.99 is 367.04, ln 0.025 / ln 0.95 is 71.9', () => {
    expect(quantileRanks(367, 0.01).low).toBeNull();
    expect(quantileRanks(368, 0.01).low).toBe(1);
    expect(quantileRanks(71, 0.95).high).toBeNull();
    expect(quantileRanks(72, 0.95).high).toBe(72);
    expect(quantileRanks(5, 0.5)).toEqual({ low: null, high: null });
    expect(quantileRanks(6, 0.5)).toEqual({ low: 1, high: 6 });
  });

  test('of many values the ranks are those of a normal distribution', () => {
    const { low, high } = quantileRanks(1e5, 0.01);
    const half = 1.96 * Math.sqrt(1e5 * 0.01 * 0.99);
    expect(Math.abs(low! - (1000 - half))).toBeLessThan(2);
    expect(Math.abs(high! - (1000 + half))).toBeLessThan(2);
  });

  test.each([
    [0, 0.5],
    [Number.NaN, 0.5],
    [10, 0],
    [10, 1],
  ])('refuses n = %d, p = %d', (n, p) => {
    expect(() => quantileRanks(n, p)).toThrow(RangeError);
  });
});
