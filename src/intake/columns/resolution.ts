/** The step of a column: how finely its readings are told apart. */

/** Buckets that may be marked when readings are whole multiples of their last decimal. */
const MOST_BUCKETS = 4_000_000;
/** With fewer distinct readings a step between two of them is a change of level, not the step of the sensor. */
const FEWEST_DISTINCT = 10;

/**
 * Step of a sensor, in the unit of the readings: the smallest difference between distinct readings where there are ten or more and
 * that is a small part of their range; else the last decimal that is written. null without a reading.
 * @param values - readings; NaN is left out.
 * @param decimals - most decimals that a reading is written with; negative for whole tens and more.
 * Cost: one pass where the readings span few multiples of the last decimal, else a sort.
 * Source: common practice, no source.
 */
export function readingStep(values: Float64Array, decimals: number): number | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < values.length; k++) {
    const value = values[k]!;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  if (!(high >= low)) return null;
  const written = Number(`1e${-decimals}`);
  const buckets = Math.round((high - low) / written) + 1;
  const { least, distinct } = buckets <= MOST_BUCKETS ? stepByMarks(values, written, low, buckets) : stepBySort(values);
  return distinct >= FEWEST_DISTINCT && least * FEWEST_DISTINCT <= high - low ? least : written;
}

interface Steps {
  readonly least: number;
  readonly distinct: number;
}

function stepByMarks(values: Float64Array, written: number, low: number, buckets: number): Steps {
  const seen = new Uint8Array(buckets);
  for (let k = 0; k < values.length; k++) if (!Number.isNaN(values[k])) seen[Math.round((values[k]! - low) / written)] = 1;
  let last = 0;
  let least = buckets;
  let distinct = 1;
  for (let at = seen.indexOf(1, 1); at >= 0; at = seen.indexOf(1, at + 1)) {
    if (at - last < least) least = at - last;
    last = at;
    distinct++;
    if (least === 1 && distinct >= FEWEST_DISTINCT) break;
  }
  return { least: Number((least * written).toPrecision(12)), distinct };
}

function stepBySort(values: Float64Array): Steps {
  const sorted = values.filter((value) => !Number.isNaN(value)).sort();
  let least = Number.POSITIVE_INFINITY;
  let distinct = 1;
  for (let k = 1; k < sorted.length; k++) {
    const step = sorted[k]! - sorted[k - 1]!;
    if (step <= 0) continue;
    distinct++;
    if (step < least) least = step;
  }
  return { least, distinct };
}
