import { describe, expect, test } from 'vitest';
import { mean } from '../../src/statistics/mean.ts';
import { sampleDeviation } from '../../src/statistics/sample-deviation.ts';
import { studentQuantile } from '../../src/statistics/student-quantile.ts';
import { welch } from '../../src/statistics/welch.ts';
import { expectNear } from './near.ts';
import { autoMileage, nist } from './nist.ts';

describe('statistics/welch', () => {
  // NIST/SEMATECH e-Handbook 1.3.5.3; t −12.946 and 136.87 degrees of freedom as printed in the manual of Boost.Math, which cites it;
  // further digits and p of the package @stdlib/stats-ttest2.
  test('two countries’ cars', () => {
    const { us, japan } = autoMileage();
    const found = welch(us, japan);
    expectNear(mean(us), 20.14458, 1e-6);
    expectNear(sampleDeviation(japan), 6.10771, 1e-6);
    expectNear(found.t, -12.946273274932, 1e-12);
    expectNear(found.dof, 136.874976672583, 1e-12);
    expectNear(found.p, 1.570854784295e-25, 1e-10);
    const half = studentQuantile(0.975, found.dof) * found.u;
    expectNear(found.difference - half, -11.915248094638, 1e-12);
    expectNear(found.difference + half, -8.757620595312, 1e-12);
  });

  // Student's sleep data, Biometrika 6, 1908 (data, and results as printed by R's t.test, from memory).
  test('Student’s sleep data', () => {
    const found = welch([0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2], [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4]);
    expectNear(found.t, -1.8608135, 1e-7);
    expectNear(found.dof, 17.776474, 1e-7);
    expectNear(found.p, 0.0793941, 1e-5);
  });

  // NIST/SEMATECH e-Handbook 1.3.5.2; limits to five decimals as printed in the manual of Boost.Math, further digits computed.
  test.each([
    [0.9, 9.258764, 9.264158],
    [0.95, 9.258242, 9.264679],
    [0.99, 9.257215, 9.265706],
  ])('one sample: %d interval of the heat-flow meter', (level, from, to) => {
    const { y } = nist('ZARR13');
    const half = (studentQuantile((1 + level) / 2, y.length - 1) * sampleDeviation(y)) / Math.sqrt(y.length);
    expectNear(mean(y) - half, from, 1e-7);
    expectNear(mean(y) + half, to, 1e-7);
  });

  // Miller & Miller, Statistics for Analytical Chemistry, 3rd ed., p. 54, as quoted in the manual of Boost.Math.
  test('three readings: 37.8 ± 2.396', () => {
    expectNear((studentQuantile(0.975, 2) * 0.964365) / Math.sqrt(3), 2.396, 2e-4);
  });

  test('constant samples', () => {
    expect(welch([1, 1], [2, 2])).toMatchObject({ difference: -1, u: 0, t: Number.NEGATIVE_INFINITY, p: 0 });
    expect(welch([1, 1], [1, 1]).p).toBeNaN();
    expect(() => welch([1], [1, 2])).toThrow('found 1 values');
  });
});
