/** The step of a column: how finely its readings are told apart. */

/** Buckets that may be marked when readings are whole multiples of their last decimal. */
const MOST_BUCKETS = 4_000_000;
/** With fewer distinct readings a step between two of them may be a change of level, not the step of the sensor. */
const FEWEST_DISTINCT = 10;

/**
 * Step of a sensor, in the unit of the readings: the smallest difference between distinct readings where there are ten or more and
 * that is a small part of their range; else, of a meter, what all of them are multiples of, where chance would hardly have it so; else the last decimal
 * that is written. null without a reading.
 * @param values - readings; NaN is left out.
 * @param decimals - most decimals that a reading is written with; negative for whole tens and more.
 * @param byMeter - whether a few levels may tell it: a temperature or a fan that stands at two of them says nothing.
 * Cost: one pass where the readings span few multiples of the last decimal, else a sort.
 * Source: common practice, no source.
 */
export function readingStep(values: Float64Array, decimals: number, byMeter = false): number | null {
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
  return distinct >= FEWEST_DISTINCT && least * FEWEST_DISTINCT <= high - low
    ? least
    : byMeter
      ? multipleOf(values, written)
      : written;
}

/** Fewer readings are not asked what they are multiples of. */
const FEWEST_READINGS = 30;
/** Readings of which each was as likely to be any multiple of the last decimal are all multiples of one of the factors this seldom, at most. */
const BY_CHANCE = 0.05;
/** So many changes from one reading to the next by just one step tell it: a finer sensor that scatters would show what lies between. */
const FEWEST_CHANGES = 10;
/** A step is this share of the largest reading at most. */
const LARGEST_SHARE = 1 / 5;
/** Meters step by these multiples of a power of ten: few enough that their chances add up to what is allowed. */
const FACTORS = [25, 5, 4, 2];
/** More multiples of the last decimal than a double tells apart safely. */
const MOST_MULTIPLE = 1e9;

/**
 * What a few levels are all multiples of: a meter of half a watt that writes 2.0, 8.0 and 8.5. First the power of ten that the digits never go below,
 * then what the levels share beyond it. The last decimal itself where that may be chance.
 */
function multipleOf(values: Float64Array, written: number): number {
  const readings = values.filter((value) => !Number.isNaN(value)).map((value) => Math.round(value / written));
  const levels = [...new Set(readings)].map(Math.abs);
  const most = Math.max(...levels);
  // Zero is a multiple of everything.
  const telling = levels.filter((level) => level > 0).length;
  if (readings.length < FEWEST_READINGS || levels.length < 2 || most > MOST_MULTIPLE) return written;
  const shared = levels.reduce(commonDivisor, 0);
  const told = (factor: number, step: number) =>
    factor === 1 || factor ** -telling <= BY_CHANCE || changesBy(readings, step) >= FEWEST_CHANGES;
  const allowed = (step: number) => shared % step === 0 && step <= most * LARGEST_SHARE;
  let ten = 1;
  while (allowed(10 * ten)) ten *= 10;
  if (!told(ten, ten)) ten = 1;
  const factor = FACTORS.find((each) => allowed(each * ten) && told(each, each * ten)) ?? 1;
  return Number((ten * factor * written).toPrecision(12));
}

function changesBy(readings: Float64Array, step: number): number {
  let changes = 0;
  for (let k = 1; k < readings.length; k++) if (Math.abs(readings[k]! - readings[k - 1]!) === step) changes++;
  return changes;
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
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
