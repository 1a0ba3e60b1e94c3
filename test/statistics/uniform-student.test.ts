import { describe, expect, test } from 'vitest';
import { studentQuantile } from '../../src/statistics/student-quantile.ts';
import { uniformStudentHalfWidth } from '../../src/statistics/uniform-student.ts';
import { expectNear } from './near.ts';

const INFINITE = Number.POSITIVE_INFINITY;

describe('statistics/uniform-student', () => {
  // JCGM 100:2008, G.1.3 (from memory): limits taken as rectangular hold 95 % within 1.65 standard uncertainties, 99 % within 1.71.
  test('limits alone', () => {
    const u = 1 / Math.sqrt(3);
    expect((uniformStudentHalfWidth(0.95, 1, 0, 5) / u).toFixed(2)).toBe('1.65');
    expect((uniformStudentHalfWidth(0.99, 1, 0, 5) / u).toFixed(2)).toBe('1.71');
  });

  test('no limits: Student', () => {
    expectNear(uniformStudentHalfWidth(0.95, 0, 2, 4), 2 * studentQuantile(0.975, 4), 1e-15);
    expectNear(uniformStudentHalfWidth(0.95, 0, 2, INFINITE), 3.919927969080108, 1e-14);
  });

  // SciPy 1.x, independently of this code: scipy.integrate.quad over the uniform part of scipy.stats.norm.cdf or t.cdf, solved by brentq to 1e-13.
  test.each([
    [1, 0.1, INFINITE, 0.9811950740011901],
    [1, 0.5773502691896258, INFINITE, 1.5655697689816939],
    [1, 1, INFINITE, 2.2541370833394763],
    [1, 1, 4, 2.9647276172365995],
    [1, 1, 2, 4.406281937509284],
    [1, 1, 1, 12.732266255842953],
    [1, 1, 0.5, 164.55919267663805],
    [1000, 1, 9, 950.0000000000082],
  ])('limits %d beside a scale of %d with %d degrees of freedom', (a, s, dof, half) => {
    expectNear(uniformStudentHalfWidth(0.95, a, s, dof), half, 1e-11);
  });

  // JCGM 101:2008, 9.2.4 (from memory): three rectangular inputs of standard deviation 1 and one of 10; the 95 % interval is ±17.0, not the ±19.9 of the normal approximation.
  test('one dominating rectangular input among three others, those as normal', () => {
    expect(uniformStudentHalfWidth(0.95, 10 * Math.sqrt(3), Math.sqrt(3), INFINITE).toFixed(1)).toBe('17.0');
  });

  // JCGM 101:2008, 9.2.3.3 (from memory): four equal rectangular inputs give ±3.88 exactly, the normal approximation ±3.92.
  test('four equal rectangular inputs, one of them as such: within 1 % of the exact interval, and on the safe side', () => {
    const half = uniformStudentHalfWidth(0.95, Math.sqrt(3), Math.sqrt(3), INFINITE);
    expect(half / 3.88).toBeGreaterThan(1);
    expect(half / 3.88).toBeLessThan(1.01);
  });

  // A triangular distribution of half width 2 holds 95 % within 2(1 − √0.05) = 1.5528, in closed form.
  test('two equal rectangular inputs, one of them as such: 0.8 % above the triangular distribution', () => {
    const half = uniformStudentHalfWidth(0.95, 1, 1 / Math.sqrt(3), INFINITE);
    expectNear(half, 2 * (1 - Math.sqrt(0.05)), 0.009);
    expect(half).toBeGreaterThan(2 * (1 - Math.sqrt(0.05)));
  });

  test('no jump where one method takes over from another', () => {
    const half = (a: number, dof: number) => uniformStudentHalfWidth(0.95, a, 1, dof);
    expectNear(half(1.0001e-4, 5), half(0.9999e-4, 5), 1e-8);
    expectNear(half(1, 1 + 2e-6), half(1, 1 + 0.5e-6), 1e-5);
    expectNear(half(1, 1.01e6), half(1, 0.99e6), 1e-6);
  });

  test('what cannot be', () => {
    expect(() => uniformStudentHalfWidth(1, 1, 1, 4)).toThrow('p is 1');
    expect(() => uniformStudentHalfWidth(0.95, -1, 1, 4)).toThrow(RangeError);
    expect(() => uniformStudentHalfWidth(0.95, 1, INFINITE, 4)).toThrow(RangeError);
    expect(() => uniformStudentHalfWidth(0.95, 1, 1, 0)).toThrow(RangeError);
  });
});
