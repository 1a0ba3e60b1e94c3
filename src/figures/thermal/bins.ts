/** Means in equal spans of a load: few enough for a quick fit of a long log. */
import type { LoadSeries } from './load-series.ts';

/** A bin's mean of an exponential is that exponential, times a factor: see `meanOfBin`. */
const BINS = 240;

export interface Bins {
  /** Mean time of the readings of each bin, s since the load began. */
  readonly t: Float64Array;
  readonly y: Float64Array;
}

type Binned = Pick<LoadSeries, 't' | 'step'> & { readonly readings: { readonly y: Float64Array } };

/** Means of time and reading from `from` to `to`, s since the load began; empty spans (gaps) give no point. One pass. */
export function binsOf({ t, readings }: Binned, from: number, to: number): Bins {
  const sums = { t: new Float64Array(BINS), y: new Float64Array(BINS), n: new Float64Array(BINS) };
  const first = Math.max(from, t[0] ?? 0);
  for (let i = 0; i < t.length; i++) {
    if (t[i]! < first || t[i]! > to) continue;
    const bin = Math.min(BINS - 1, Math.floor(((t[i]! - first) / (to - first)) * BINS));
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
  const count = length / BINS / (step || length);
  const half = step / (2 * timeConstant);
  return count > 1 && half > 0 ? Math.sinh(count * half) / (count * Math.sinh(half)) : 1;
}
