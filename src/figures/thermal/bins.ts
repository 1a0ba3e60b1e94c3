/** Means in equal spans of a load: few enough for a quick fit of a long log. */
import type { LoadSeries } from './load-series.ts';

/**
 * At most so many bins. A bin's mean of an exponential is that exponential times a factor (see `meanOfBin`), the same one for all bins
 * because all but the last hold as many rows: with five rows here and six there, a quick exponential would look like two.
 */
const BINS = 240;
/** Rows at the edge of a bin belong to the next one, however their time was rounded. */
const EDGE = 1e-6;

export interface Bins {
  /** Mean time of the readings of each bin, s since the load began. */
  readonly t: Float64Array;
  readonly y: Float64Array;
}

type Binned = Pick<LoadSeries, 't' | 'step'> & { readonly readings: { readonly y: Float64Array } };

/** Means of time and reading from `from` to `to`, s since the load began; empty spans (gaps) give no point. One pass. */
export function binsOf({ t, readings, step }: Binned, from: number, to: number): Bins {
  const sums = { t: new Float64Array(BINS), y: new Float64Array(BINS), n: new Float64Array(BINS) };
  const first = Math.max(from, t.find((at) => at >= from) ?? from);
  const width = widthOf(step, to - first);
  for (let i = 0; i < t.length; i++) {
    if (t[i]! < first || t[i]! > to) continue;
    const bin = Math.min(BINS - 1, Math.floor((t[i]! - first) / width + EDGE));
    sums.t[bin]! += t[i]!;
    sums.y[bin]! += readings.y[i]!;
    sums.n[bin]! += 1;
  }
  const filled = [...sums.n.keys()].filter((bin) => sums.n[bin]! > 0);
  const meanIn = (values: Float64Array) => Float64Array.from(filled, (bin) => values[bin]! / sums.n[bin]!);
  return { t: meanIn(sums.t), y: meanIn(sums.y) };
}

/** A bin's mean of exp(−t/τ) over its value at the mean time of the bin's readings: more than 1, since the curve is convex. */
export function meanOfBin({ step }: Pick<LoadSeries, 'step'>, length: number, timeConstant: number): number {
  const count = step > 0 ? widthOf(step, length) / step : 1;
  const half = step / (2 * timeConstant);
  return count > 1 && half > 0 ? Math.sinh(count * half) / (count * Math.sinh(half)) : 1;
}

/** Width of a bin, s: as many steps of the log as leave no more than the bins that there may be. */
function widthOf(step: number, length: number): number {
  const width = length / BINS;
  return step > 0 ? step * Math.max(1, Math.ceil(width / step - EDGE)) : width;
}
