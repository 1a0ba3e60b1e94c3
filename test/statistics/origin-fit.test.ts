import { describe, expect, test } from 'vitest';
import { originFit } from '../../src/statistics/origin-fit.ts';
import { expectNear } from './near.ts';
import { nist } from './nist.ts';

describe('statistics/origin-fit', () => {
  // NIST Statistical Reference Datasets. The centred R² would be −0.157.
  test('NoInt1: certified slope, deviations and uncentred R²', () => {
    const { x, y, certified } = nist('NoInt1');
    const fit = originFit(x, y);
    expectNear(fit.slope, certified.params[0]!, 1e-14);
    expectNear(fit.uSlope, certified.sd[0]!, 1e-12);
    expectNear(fit.residualDeviation, certified.residualSd, 1e-12);
    expectNear(fit.rss, certified.rss, 1e-12);
    expectNear(fit.rSquared, certified.rSquared, 1e-14);
    expect(fit.dof).toBe(certified.df);
  });

  test('one pair is exact with unknown uncertainty; x all zero is refused', () => {
    expect(originFit([2], [6]).slope).toBe(3);
    expect(originFit([2], [6]).uSlope).toBeNaN();
    expect(() => originFit([0, 0], [1, 2])).toThrow('all x are 0');
  });
});
