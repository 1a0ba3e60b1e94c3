import { requireFinite } from './require-finite.ts';

/**
 * Sample quantile, type 7: with h = (n − 1)p, straight between the order statistics of 0-based rank ⌊h⌋ and ⌊h⌋ + 1.
 *
 * When: a percentile of readings. Other types differ by up to one order statistic, so say "type 7" where it is printed.
 * @param values one or more finite numbers, in any order; left as they are. Unit: any; the quantile has the same.
 * @param p 0 … 1
 * @throws RangeError for no values, one that is not finite, or p out of range
 * Source: Hyndman & Fan, The American Statistician 50(4), 1996, 361–365, definition 7.
 * Cost: O(n) on average, on a copy.
 * @example
 * quantile([3, 1, 2, 4], 0.5) // 2.5
 */
export function quantile(values: ArrayLike<number>, p: number): number {
  if (values.length === 0) throw new RangeError('found no values, expected at least 1');
  if (!(p >= 0 && p <= 1)) throw new RangeError(`p is ${p}, expected 0 to 1`);
  requireFinite('values', values);
  const copy = Float64Array.from(values);
  const h = (copy.length - 1) * p;
  const rank = Math.floor(h);
  select(copy, rank);
  const below = copy[rank]!;
  if (h === rank) return below;
  let above = Number.POSITIVE_INFINITY;
  for (let i = rank + 1; i < copy.length; i++) above = Math.min(above, copy[i]!);
  return below + (h - rank) * (above - below);
}

/** Hoare's selection: moves the value of this rank to its place, smaller ones before it, larger ones after it. */
function select(values: Float64Array, rank: number): void {
  let from = 0;
  let to = values.length - 1;
  while (from < to) {
    const pivot = values[(from + to) >> 1]!;
    let i = from;
    let j = to;
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i > j) break;
      const swapped = values[i]!;
      values[i++] = values[j]!;
      values[j--] = swapped;
    }
    if (rank <= j) to = j;
    else if (rank >= i) from = i;
    else return;
  }
}
