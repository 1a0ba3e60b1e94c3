import { describe, expect, test } from 'vitest';
import { studentTail } from '../../src/statistics/student-tail.ts';
import { expectNear } from './near.ts';

describe('statistics/student-tail', () => {
  // One degree of freedom is Cauchy's distribution, two have a closed form.
  test.each([0, 1e-9, 0.3, 1, 7, 1e6])('t = %d: closed forms for one and two degrees of freedom', (t) => {
    expectNear(studentTail(t, 1).between, Math.atan(t) / Math.PI, 1e-14);
    expectNear(studentTail(t, 2).between, t / (2 * Math.sqrt(2 + t * t)), 1e-14);
  });

  test('far out the tail keeps its digits', () => {
    expectNear(studentTail(1e6, 1).above, Math.atan(1e-6) / Math.PI, 1e-14);
    expect(studentTail(Number.POSITIVE_INFINITY, 3)).toMatchObject({ between: 0.5, above: 0 });
  });

  test('arguments out of range are refused', () => {
    expect(() => studentTail(-1, 3)).toThrow('t is -1');
    expect(() => studentTail(1, Number.POSITIVE_INFINITY)).toThrow('dof is Infinity');
  });
});
