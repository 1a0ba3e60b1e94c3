/** Relative comparison for numbers; Vitest's own toBeCloseTo is absolute, so that small numbers would always pass. */
import { expect } from 'vitest';

/** Fails unless `actual` lies within `relative` of `expected`, as a share of it. An expectation of zero has to be met exactly. */
export function expectNear(actual: number | undefined, expected: number, relative: number): void {
  const off = Math.abs(Number(actual) - expected);
  expect(off <= relative * Math.abs(expected), `${actual} is not within ${relative} (relative) of ${expected}`).toBe(true);
}

/** As `expectNear`, for lists of equal length. */
export function expectAllNear(actual: ArrayLike<number>, expected: readonly number[], relative: number): void {
  expect(actual.length).toBe(expected.length);
  for (let i = 0; i < expected.length; i++) expectNear(actual[i], expected[i]!, relative);
}
