import { describe, expect, test } from 'vitest';
import { weightedMean } from '../../src/statistics/weighted-mean.ts';
import { expectNear } from './near.ts';
import { nist } from './nist.ts';

describe('statistics/weighted-mean', () => {
  test('by hand', () => {
    expect(weightedMean([1, 2, 6], [3, 2, 1])).toEqual({ mean: 13 / 6, total: 6 });
    expect(weightedMean([1, 2, 6])).toEqual({ mean: 3, total: 3 });
    expect(weightedMean([]).mean).toBeNaN();
  });

  test('a small spread on a large offset keeps its digits (NIST NumAcc3)', () => {
    const { y, certified } = nist('NumAcc3');
    expectNear(weightedMean(y, new Array(y.length).fill(0.3)).mean, certified.mean, 1e-15);
  });
});
