import { describe, expect, test } from 'vitest';
import { polynomialFit } from '../../src/statistics/polynomial-fit.ts';
import { expectAllNear, expectNear } from './near.ts';
import { nist } from './nist.ts';

describe('statistics/polynomial-fit', () => {
  test('Pontius: NIST certified coefficients, deviations, R²', () => {
    const { x, y, certified } = nist('Pontius');
    const fit = polynomialFit(x, y, 2);
    expectAllNear(fit.coefficients, certified.params, 1e-10);
    expectAllNear(fit.u, certified.sd, 1e-10);
    expectNear(fit.residualDeviation, certified.residualSd, 1e-10);
    expectNear(fit.rss, certified.rss, 1e-10);
    expectNear(fit.rSquared, certified.rSquared, 1e-14);
    expect(fit.dof).toBe(certified.df);
  });

  test('degree 1 is the line of Norris', () => {
    const { x, y, certified } = nist('Norris');
    const fit = polynomialFit(x, y, 1);
    expectAllNear(fit.coefficients, certified.params, 1e-11);
    expectAllNear(fit.u, certified.sd, 1e-12);
  });

  test('too few different x are refused', () => {
    expect(() => polynomialFit([1, 1, 2], [1, 2, 3], 2)).toThrow('needs 3 different x');
    expect(() => polynomialFit([1, 2], [1, 2], 2)).toThrow('found 2 pairs, expected at least 3');
    expect(() => polynomialFit([1, 2], [1, 2], -1)).toThrow('degree is -1');
  });
});
