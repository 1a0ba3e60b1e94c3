/** Where a line must break: a stretch without readings is not bridged. */

/** An unbroken stretch of readings: positions in the arrays, `end` exclusive. */
export interface Segment {
  readonly start: number;
  readonly end: number;
}

/** A channel's own readings on the time axis, without the rows where it has none. */
export interface Readings {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** A gap is a step longer than this many median steps, as in the Log's own time axis. */
const GAP = 5;

/** Drops the rows without a reading (NaN). Channels may be logged at different rates in one file. */
export function presentReadings(x: Float64Array, y: Float64Array): Readings {
  const [times, values] = [new Float64Array(y.length), new Float64Array(y.length)];
  let count = 0;
  for (let row = 0; row < y.length; row += 1) {
    if (!Number.isFinite(y[row])) continue;
    times[count] = x[row]!;
    values[count] = y[row]!;
    count += 1;
  }
  return { x: times.subarray(0, count), y: values.subarray(0, count) };
}

/** Splits readings where the step between two is more than five times the channel's median step. */
export function segments(x: Float64Array): Segment[] {
  if (x.length === 0) return [];
  const longest = GAP * medianStep(x);
  const found: Segment[] = [];
  let start = 0;
  for (let i = 1; i < x.length; i += 1) {
    if (x[i]! - x[i - 1]! <= longest) continue;
    found.push({ start, end: i });
    start = i;
  }
  return [...found, { start, end: x.length }];
}

/** Median of the positive steps; 0 when there is none, so that every step is a gap only where time moves at all. */
function medianStep(x: Float64Array): number {
  const steps = new Float64Array(x.length - 1);
  let count = 0;
  for (let i = 1; i < x.length; i += 1) if (x[i]! > x[i - 1]!) steps[count++] = x[i]! - x[i - 1]!;
  const sorted = steps.subarray(0, count).sort();
  if (count === 0) return 0;
  return (sorted[(count - 1) >> 1]! + sorted[count >> 1]!) / 2;
}

/** Stretches cut where a phase begins or ends, so that no mean is taken over two phases; `edges` in the unit of `x`, in any order. */
export function cutAt(x: Float64Array, parts: readonly Segment[], edges: readonly number[]): Segment[] {
  const ascending = [...new Set(edges)].sort((a, b) => a - b);
  return parts.flatMap(({ start, end }) => {
    // The last phase is closed: the last reading belongs to it.
    const before = ascending.filter((edge) => edge < x[end - 1]!);
    const inside = before.map((edge) => firstFrom(x, edge)).filter((at) => at > start && at < end);
    const starts = [start, ...new Set(inside)];
    return starts.map((from, i) => ({ start: from, end: starts[i + 1] ?? end }));
  });
}

/** Position of the first reading at `edge` or later. */
function firstFrom(x: Float64Array, edge: number): number {
  let [low, high] = [0, x.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (x[middle]! < edge) low = middle + 1;
    else high = middle;
  }
  return low;
}
