/** Rows in order of time: nothing is sorted, what runs backward is set aside. */

/** What is wrong with a row's time. */
export type Disorder = 'backward' | 'ahead';

export interface Order {
  /** Indices that stay, with times that never fall. */
  readonly kept: Int32Array;
  readonly disordered: readonly { readonly index: number; readonly why: Disorder }[];
}

/**
 * Keeps the times that never fall. A time that is earlier than the last one kept is set aside, unless the last one kept is
 * itself the odd one: later than the two that follow it, while these are in order with the one before.
 * @param times - seconds, no NaN.
 */
export function orderRows(times: Float64Array): Order {
  const kept = new Int32Array(times.length);
  const disordered: { index: number; why: Disorder }[] = [];
  let count = 0;
  for (let k = 0; k < times.length; k++) {
    const last = count > 0 ? kept[count - 1]! : -1;
    if (last < 0 || times[k]! >= times[last]!) {
      kept[count++] = k;
      continue;
    }
    const before = count > 1 ? times[kept[count - 2]!]! : Number.NEGATIVE_INFINITY;
    const next = k + 1 < times.length ? times[k + 1]! : Number.NaN;
    if (last === k - 1 && times[k]! >= before && next >= times[k]! && next < times[last]!) {
      disordered.push({ index: last, why: 'ahead' });
      kept[count - 1] = k;
    } else disordered.push({ index: k, why: 'backward' });
  }
  return { kept: kept.subarray(0, count), disordered };
}

/**
 * Median of the steps; of those longer than nothing where most rows share their instant with the row before, as with four rows a second
 * and stamps of whole seconds. null with fewer than two rows. Unit: that of the times.
 */
export function medianStep(seconds: Float64Array): number | null {
  if (seconds.length < 2) return null;
  const even = evenStep(seconds);
  if (even > 0) return even;
  const steps = new Float64Array(seconds.length - 1);
  for (let k = 0; k < steps.length; k++) steps[k] = seconds[k + 1]! - seconds[k]!;
  const step = medianOf(steps);
  if (step > 0) return step;
  const longer = steps.filter((each) => each > 0);
  return longer.length > 0 ? medianOf(longer) : step;
}

/** The step where all are the same to the last bit; NaN where they differ. */
function evenStep(seconds: Float64Array): number {
  const step = seconds[1]! - seconds[0]!;
  for (let k = 2; k < seconds.length; k++) if (seconds[k]! - seconds[k - 1]! !== step) return Number.NaN;
  return step;
}

/** Whether times never fall: then every row stays. */
export function isOrdered(times: Float64Array): boolean {
  for (let k = 1; k < times.length; k++) if (!(times[k]! >= times[k - 1]!)) return false;
  return true;
}

/** Sorts the array as far as it must. */
function medianOf(steps: Float64Array): number {
  const middle = steps.length >> 1;
  const upper = selected(steps, middle);
  if (steps.length % 2 === 1) return upper;
  let lower = steps[0]!;
  for (let k = 1; k < middle; k++) if (steps[k]! > lower) lower = steps[k]!;
  return (lower + upper) / 2;
}

/** The value that would stand at `rank`, none before it larger and none behind it smaller: Hoare's selection. Cost: O(n) for what logs hold. */
function selected(values: Float64Array, rank: number): number {
  let [from, to] = [0, values.length - 1];
  while (from < to) {
    const pivot = values[(from + to) >> 1]!;
    let [low, high] = [from, to];
    while (low <= high) {
      while (values[low]! < pivot) low++;
      while (values[high]! > pivot) high--;
      if (low > high) break;
      [values[low], values[high]] = [values[high]!, values[low]!];
      low++;
      high--;
    }
    if (rank <= high) to = high;
    else if (rank >= low) from = low;
    else break;
  }
  return values[rank]!;
}

/** Steps longer than this many medians are gaps. */
const GAP = 5;

/** Rows after steps longer than five times the median. Common practice, no source. */
export function findGaps(seconds: Float64Array, step: number | null): { row: number; length: number }[] {
  const gaps: { row: number; length: number }[] = [];
  if (step === null || step <= 0) return gaps;
  for (let row = 1; row < seconds.length; row++) {
    const length = seconds[row]! - seconds[row - 1]!;
    if (length > GAP * step) gaps.push({ row, length });
  }
  return gaps;
}

/** Rows from which on this many steps are taken together. */
const STRETCH = 10;

/** First row from which the sampling step is another for good: medians before and after differ by half or more. null where it is not. */
export function stepChange(seconds: Float64Array): { row: number; before: number; after: number } | null {
  if (seconds.length < 4 * STRETCH) return null;
  const before = medianStep(seconds.subarray(0, STRETCH + 1))!;
  const after = medianStep(seconds.subarray(seconds.length - STRETCH - 1))!;
  if (!(before > 0 && after > 0) || Math.max(before, after) < 1.5 * Math.min(before, after)) return null;
  const split = Math.sqrt(before * after);
  for (let row = 1; row + STRETCH < seconds.length; row++) {
    const local = medianStep(seconds.subarray(row - 1, row + STRETCH))!;
    if (local > split === after > split) return { row, before, after };
  }
  return null;
}
