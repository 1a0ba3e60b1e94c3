import { requireFinite } from './require-finite.ts';

/**
 * Arithmetic mean. A second pass adds the mean of what the first left over, so that a small spread on a large offset
 * (epoch milliseconds, 1,000,000.2 ± 0.1) keeps all its digits.
 *
 * When: independent readings of equal weight. For a stretch of a log use `seriesMean`, which also gives the uncertainty.
 * @param values one or more finite numbers. Unit: any; the mean has the same.
 * @throws RangeError when there are none, or one is not finite
 * Source: JCGM 100:2008, 4.2.1, eq. 3; the second pass: Chan, Golub & LeVeque, The American Statistician 37 (1983) 242–247.
 * Cost: two passes.
 * @example
 * mean([1, 2, 6]) // 3
 */
export function mean(values: ArrayLike<number>): number {
  if (values.length === 0) throw new RangeError('found no values, expected at least 1');
  requireFinite('values', values);
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  const first = sum / values.length;
  let left = 0;
  for (let i = 0; i < values.length; i++) left += values[i]! - first;
  return first + left / values.length;
}
