import { describe, expect, test } from 'vitest';
import { bootstrap } from '../../src/statistics/bootstrap.ts';
import { mean } from '../../src/statistics/mean.ts';
import { quantile } from '../../src/statistics/quantile.ts';
import { expectNear } from './near.ts';

// Efron & Tibshirani, An Introduction to the Bootstrap, 1993, table 2.1: days of survival (data from memory).
const TREATED = [94, 197, 16, 38, 99, 141, 23];
const CONTROL = [52, 104, 146, 10, 51, 30, 40, 27, 46];

describe('statistics/bootstrap', () => {
  // The limit for infinitely many resamples is known: for the mean the plug-in standard error, for the median by enumeration.
  test.each([
    ['treated', TREATED, 23.3635, 37.8347],
    ['control', CONTROL, 13.3489, 13.0759],
  ])('mouse data, %s: standard errors of mean and median', (_, values, ofMean, ofMedian) => {
    expectNear(bootstrap(values, mean, { seed: 1, resamples: 20_000 }).u, ofMean, 0.03);
    expectNear(bootstrap(values, (sample) => quantile(sample, 0.5), { seed: 2, resamples: 20_000 }).u, ofMedian, 0.03);
  });

  test('the interval holds the value and grows with the level; a seed fixes it all', () => {
    const wide = bootstrap(CONTROL, mean, { seed: 5, level: 0.99 });
    const narrow = bootstrap(CONTROL, mean, { seed: 5, level: 0.5 });
    expect(wide.value).toBe(mean(CONTROL));
    expect(wide.interval[0]).toBeLessThan(narrow.interval[0]);
    expect(narrow.interval[0]).toBeLessThan(wide.value);
    expect(narrow.interval[1]).toBeLessThan(wide.interval[1]);
    expect(bootstrap(CONTROL, mean, { seed: 5, level: 0.99 })).toEqual(wide);
    expect(bootstrap(CONTROL, mean, { seed: 6, level: 0.99 })).not.toEqual(wide);
  });

  test('options out of range are refused', () => {
    expect(() => bootstrap([1], mean, { seed: 1 })).toThrow('found 1 values');
    expect(() => bootstrap([1, 2], mean, { seed: 1, resamples: 1 })).toThrow('resamples is 1');
    expect(() => bootstrap([1, 2], mean, { seed: 1, level: 1 })).toThrow('level is 1');
  });
});
