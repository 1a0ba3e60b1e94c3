import reference from '@stdlib/stats-base-dists-t-quantile';
import { describe, expect, test } from 'vitest';
import { studentQuantile } from '../../src/statistics/student-quantile.ts';
import { expectNear } from './near.ts';

describe('statistics/student-quantile', () => {
  // Package @stdlib/stats-base-dists-t-quantile.
  const dofs = [0.7, 1, 1.5, 2, 2.37, 3, 5, 9, 16.75, 30, 100, 1000.5, 9999];
  test.each(dofs)('%d degrees of freedom: agrees with the reference package to 1e-12', (dof) => {
    for (const p of [1e-8, 1e-4, 0.005, 0.025, 0.1, 0.24, 0.26, 0.45, 0.4999, 0.51, 0.6, 0.75, 0.9, 0.975, 0.995, 0.99999]) {
      expectNear(studentQuantile(p, dof), reference(p, dof), 1e-12);
    }
  });

  // mpmath 1.3, forty digits: inversion of the incomplete beta function.
  test.each([
    [1e-10, 0.5, -10284911563163398000],
    [1e-4, 1.5, -242.2640988465063],
    [0.025, 2.37, -3.718920839797458],
    [0.3, 1000.5, -0.5245676237324935],
    [0.1, 12345, -1.2816201464286427],
    [0.975, 1e6, 1.9599663568141066],
    [0.995, 136.874977, 2.6122256330566684],
    [0.975, 0.7, 36.61141503158865],
  ])('p %d, %d degrees of freedom: agrees with arbitrary precision', (p, dof, expected) => {
    expectNear(studentQuantile(p, dof), expected, 1e-13);
  });

  // JCGM 100:2008, table G.2: coverage 68.27, 90, 95, 95.45, 99, 99.73 % (layout from memory).
  test.each([
    [1, [1.84, 6.31, 12.71, 13.97, 63.66, 235.78]],
    [5, [1.11, 2.02, 2.57, 2.65, 4.03, 5.51]],
    [10, [1.05, 1.81, 2.23, 2.28, 3.17, 3.96]],
    [20, [1.03, 1.72, 2.09, 2.13, 2.85, 3.42]],
    [50, [1.01, 1.68, 2.01, 2.05, 2.68, 3.16]],
    [Number.POSITIVE_INFINITY, [1, 1.645, 1.96, 2, 2.576, 3]],
  ])('GUM table G.2, %d degrees of freedom', (dof, row) => {
    const shares = [0.6827, 0.9, 0.95, 0.9545, 0.99, 0.9973];
    const decimals = Number.isFinite(dof) ? 2 : 3;
    row.forEach((expected, k) => {
      expect(Number(studentQuantile((1 + shares[k]!) / 2, dof).toFixed(decimals))).toBe(expected);
    });
  });

  test('the two halves mirror each other, the middle is 0, the ends are infinite', () => {
    expectNear(studentQuantile(0.2, 4), -studentQuantile(0.8, 4), 1e-15);
    expect(studentQuantile(0.5, 3)).toBe(0);
    expect(studentQuantile(0, 3)).toBe(Number.NEGATIVE_INFINITY);
    expect(studentQuantile(1, 3)).toBe(Number.POSITIVE_INFINITY);
  });

  test('arguments out of range are refused', () => {
    expect(() => studentQuantile(1.1, 3)).toThrow('p is 1.1, expected 0 to 1');
    expect(() => studentQuantile(0.9, 0)).toThrow('dof is 0, expected a number above 0');
    expect(() => studentQuantile(0.9, Number.NaN)).toThrow('dof is NaN');
  });
});
