/** Ranks of the order statistics between which a quantile lies, 1-based; null where so few values leave that end open. */
export interface QuantileRanks {
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * Ranks r and s of n independent values, in ascending order, so that the p-quantile of what they were drawn from lies from the r-th to
 * the s-th with 95 % or more, at most 2.5 % beyond each end: the number of values below the quantile is binomial.
 *
 * When: the interval of a percentile, whatever the distribution. Counts of correlated readings are first made effective counts.
 * @param n number of values, 1 or more; rounded down
 * @param p 0 < p < 1
 * @throws RangeError for n or p out of range
 * Source: H. A. David and H. N. Nagaraja, Order Statistics, 2003, 7.1 (from memory).
 * Cost: O(n p).
 * @example
 * quantileRanks(10, 0.5) // { low: 2, high: 9 }
 */
export function quantileRanks(n: number, p: number): QuantileRanks {
  const count = Math.floor(n);
  if (!(count >= 1 && Number.isFinite(count))) throw new RangeError(`n is ${n}, expected 1 or more`);
  if (!(p > 0 && p < 1)) throw new RangeError(`p is ${p}, expected between 0 and 1`);
  let low = 0;
  let below = 0;
  let logShare = count * Math.log1p(-p);
  for (let k = 0; k < count; k++) {
    below += Math.exp(logShare);
    if (below <= TAIL) low = k + 1;
    if (below >= 1 - TAIL) return { low: low === 0 ? null : low, high: k + 1 };
    logShare += Math.log((count - k) / (k + 1)) + Math.log(p) - Math.log1p(-p);
  }
  return { low: low === 0 ? null : low, high: null };
}

const TAIL = 0.025;
