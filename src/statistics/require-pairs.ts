import { requireFinite } from './require-finite.ts';

/**
 * Refuses two series that cannot be read as pairs: unequal lengths, too few pairs, or something other than finite numbers.
 *
 * @param x first members, any unit
 * @param y second members, any unit
 * @param least smallest number of pairs that the caller can use
 * @throws RangeError saying what was found and what was expected
 * Cost: one pass over each.
 * @example
 * requirePairs([1, 2], [3, 4], 2) // undefined
 * requirePairs([1], [3, 4], 1) // throws x has 1 values and y has 2, expected as many of both
 */
export function requirePairs(x: ArrayLike<number>, y: ArrayLike<number>, least: number): void {
  if (x.length !== y.length) throw new RangeError(`x has ${x.length} values and y has ${y.length}, expected as many of both`);
  if (x.length < least) throw new RangeError(`found ${x.length} pairs, expected at least ${least}`);
  requireFinite('x', x);
  requireFinite('y', y);
}
