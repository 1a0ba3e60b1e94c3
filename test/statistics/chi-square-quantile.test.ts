import { describe, expect, test } from 'vitest';
import { chiSquareQuantile } from '../../src/statistics/chi-square-quantile.ts';
import { normalQuantile } from '../../src/statistics/normal-quantile.ts';
import { expectNear } from './near.ts';

describe('statistics/chi-square-quantile', () => {
  test('two degrees of freedom have a closed form, −2 ln(1 − p)', () => {
    for (const p of [1e-6, 0.025, 0.5, 0.975, 0.999]) expectNear(chiSquareQuantile(p, 2), -2 * Math.log1p(-p), 1e-12);
  });

  test('one degree of freedom is the square of a normal deviate', () => {
    for (const p of [0.025, 0.5, 0.975]) expectNear(chiSquareQuantile(p, 1), normalQuantile((1 + p) / 2) ** 2, 1e-11);
  });

  test.each([
    [1, 0.001, 5.024],
    [5, 0.831, 12.833],
    [10, 3.247, 20.483],
    [30, 16.791, 46.979],
    [100, 74.222, 129.561],
  ])('%d degrees of freedom: NIST/SEMATECH e-Handbook, 1.3.6.7.4 (from memory), to three decimals', (dof, low, high) => {
    expect(chiSquareQuantile(0.025, dof).toFixed(3)).toBe(low.toFixed(3));
    expect(chiSquareQuantile(0.975, dof).toFixed(3)).toBe(high.toFixed(3));
  });

  test('refuses what it is not for', () => {
    expect(() => chiSquareQuantile(0, 3)).toThrow(RangeError);
    expect(() => chiSquareQuantile(0.5, 2.5)).toThrow(RangeError);
    expect(() => chiSquareQuantile(0.5, 0)).toThrow(RangeError);
  });
});
