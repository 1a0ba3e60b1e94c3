/** Readings of one column over a stretch of rows: missing ones and gaps left out, each weighted by the time it stands for. */
import type { Log } from '../intake/log.ts';
import type { Rows } from './soak.ts';

export interface Readings {
  /** Seconds since the log's first row. */
  readonly t: Float64Array;
  readonly y: Float64Array;
  /** Seconds that each reading stands for: half of each step beside it, steps over a gap not counted. */
  readonly weights: Float64Array;
  /** Sum of the weights: the time that was observed. */
  readonly observed: number;
  readonly gaps: number;
  /** Seconds inside gaps, left out. */
  readonly gapTime: number;
  /** First and last line of the file with a reading; null without any. */
  readonly lines: readonly [number, number] | null;
}

/** A step longer than this many median steps is a gap, as intake tells gaps of the time axis. */
const GAP_STEPS = 5;

/**
 * Collects the readings of `values` (one per row, NaN = none) in `rows`. The weights are those of the trapezoidal rule, so
 * that a weighted mean times `observed` is the integral. One pass.
 */
export function readingsOf(log: Log, values: Float64Array, rows: Rows): Readings {
  const { seconds, step } = log.time;
  const size = Math.max(0, rows.to - rows.from);
  const t = new Float64Array(size);
  const y = new Float64Array(size);
  const weights = new Float64Array(size);
  const limit = (step ?? 0) * GAP_STEPS || Number.POSITIVE_INFINITY;
  let n = 0;
  let observed = 0;
  let gaps = 0;
  let gapTime = 0;
  let first = -1;
  let last = -1;
  for (let row = rows.from; row < rows.to; row++) {
    const value = values[row]!;
    if (Number.isNaN(value)) continue;
    t[n] = seconds[row]!;
    y[n] = value;
    if (first < 0) first = row;
    else {
      const width = t[n]! - t[n - 1]!;
      if (width > limit) {
        gaps++;
        gapTime += width;
      } else {
        weights[n - 1]! += width / 2;
        weights[n] = width / 2;
        observed += width;
      }
    }
    last = row;
    n++;
  }
  const lines = first < 0 ? null : ([log.lines[first]!, log.lines[last]!] as const);
  return { t: t.subarray(0, n), y: y.subarray(0, n), weights: weights.subarray(0, n), observed, gaps, gapTime, lines };
}
