import { describe, expect, test } from 'vitest';
import { autocorrelation } from '../../src/statistics/autocorrelation.ts';
import { expectNear } from './near.ts';
import { nist } from './nist.ts';

describe('statistics/autocorrelation', () => {
  // NIST Statistical Reference Datasets, univariate, certified lag-1 coefficients; NumAcc3's data are rounded to doubles.
  test.each([
    ['Lew', 1e-12],
    ['Michelso', 1e-12],
    ['PiDigits', 1e-12],
    ['NumAcc1', 0],
    ['NumAcc2', 1e-12],
    ['NumAcc3', 1e-8],
  ])('%s: certified lag-1 coefficient', (name, tolerance) => {
    const { y, certified } = nist(name);
    expectNear(autocorrelation(y, 1), certified.lag1, tolerance);
  });

  test('lag 0 gives 1, a constant series has none', () => {
    expect(autocorrelation([1, 2, 4], 0)).toBe(1);
    expect(autocorrelation([2, 2, 2], 1)).toBeNaN();
  });

  test('a lag out of range is refused', () => {
    expect(() => autocorrelation([1, 2], 2)).toThrow('lag is 2, expected a whole number from 0 to 1');
    expect(() => autocorrelation([1, 2], 0.5)).toThrow('lag is 0.5');
  });
});
