import { describe, expect, test } from 'vitest';
import { fTail } from '../../src/statistics/f-tail.ts';
import { studentTail } from '../../src/statistics/student-tail.ts';
import { expectNear } from './near.ts';

describe('statistics/f-tail', () => {
  // Upper points of F as NIST/SEMATECH e-Handbook, 1.3.6.7.3, tabulates them (from memory): printed to four figures or more.
  test.each([
    [4.965, 1, 10, 0.05],
    [3.478, 4, 10, 0.05],
    [10.044, 1, 10, 0.01],
    [4052.19, 1, 1, 0.01],
  ])('F = %f with %i and %i degrees of freedom', (ratio, above, below, p) => {
    expectNear(fTail(ratio, above, below), p, 3e-4);
  });

  test('with one degree of freedom above, F is the square of Student’s t', () => {
    for (const t of [0.1, 1, 2.5, 12]) expectNear(fTail(t * t, 1, 7), 2 * studentTail(t, 7).above, 1e-12);
  });

  test('the other way round it is the other tail', () => {
    for (const ratio of [0.2, 1, 3.3]) expectNear(fTail(ratio, 3, 8) + fTail(1 / ratio, 8, 3), 1, 1e-12);
  });

  test('ends, and arguments out of range', () => {
    expect(fTail(0, 2, 3)).toBe(1);
    expect(fTail(Number.POSITIVE_INFINITY, 2, 3)).toBe(0);
    expect(() => fTail(-1, 2, 3)).toThrow(RangeError);
    expect(() => fTail(1, 0.5, 3)).toThrow(RangeError);
  });
});
