import { mean } from './mean.ts';

/**
 * Autocorrelation coefficient at one lag: Σ(yᵢ − m)(yᵢ₊ₖ − m) over the n − k pairs, divided by Σ(yᵢ − m)² over all n, with one mean m.
 *
 * When: to tell how much a reading repeats the one k rows before. Rows are taken as evenly spaced.
 * @param values finite numbers, in order. Unit: any.
 * @param lag whole number of rows, 0 ≤ lag < n
 * @returns a number in −1 … 1 (unit 1); NaN for a constant series, which has none
 * @throws RangeError for a lag out of range, or a value that is not finite
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.12 (from memory: section number).
 * Cost: two passes for the mean, one for the sums.
 * @example
 * autocorrelation([1, 2, 3, 4], 1) // 0.25
 */
export function autocorrelation(values: ArrayLike<number>, lag: number): number {
  const n = values.length;
  if (!Number.isInteger(lag) || lag < 0 || lag >= n)
    throw new RangeError(`lag is ${lag}, expected a whole number from 0 to ${n - 1}`);
  const centre = mean(values);
  let products = 0;
  let squares = 0;
  for (let i = 0; i < n; i++) {
    const d = values[i]! - centre;
    squares += d * d;
    if (i + lag < n) products += d * (values[i + lag]! - centre);
  }
  return products / squares;
}
