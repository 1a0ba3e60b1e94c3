/** The step of a column: how finely its readings are told apart. */

/** Buckets that may be marked when readings are whole multiples of their last decimal. */
const MOST_BUCKETS = 4_000_000;

/**
 * Smallest difference between two distinct readings, in their own unit; null with fewer than two distinct readings.
 * @param values - readings; NaN is left out.
 * @param decimals - most decimals that a reading is written with.
 * Cost: one pass where the readings span few multiples of the last decimal, else a sort.
 */
export function smallestStep(values: Float64Array, decimals: number): number | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  if (!(high > low)) return null;
  const scale = 10 ** decimals;
  const from = Math.round(low * scale);
  const buckets = Math.round(high * scale) - from + 1;
  return buckets <= MOST_BUCKETS ? stepByMarks(values, scale, from, buckets) : stepBySort(values);
}

function stepByMarks(values: Float64Array, scale: number, from: number, buckets: number): number | null {
  const seen = new Uint8Array(buckets);
  for (const value of values) if (value === value) seen[Math.round(value * scale) - from] = 1;
  let last = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let at = seen.indexOf(1, 1); at >= 0; at = seen.indexOf(1, at + 1)) {
    if (at - last < least) least = at - last;
    last = at;
    if (least === 1) break;
  }
  return Number.isFinite(least) ? least / scale : null;
}

function stepBySort(values: Float64Array): number | null {
  const sorted = values.filter((value) => value === value).sort();
  let least = Number.POSITIVE_INFINITY;
  for (let k = 1; k < sorted.length; k++) {
    const step = sorted[k]! - sorted[k - 1]!;
    if (step > 0 && step < least) least = step;
  }
  return Number.isFinite(least) ? least : null;
}
