/** Readings of one column over a stretch of rows: missing ones and gaps left out, each weighted by the time it stands for. */
import type { Log } from '../intake/log.ts';
import { quantile } from '../statistics/quantile.ts';
import type { Rows } from './soak.ts';

export interface Readings {
  /** Seconds since the log's first row. */
  readonly t: Float64Array;
  readonly y: Float64Array;
  /** Seconds that each reading stands for: half of each step beside it, steps over a gap not counted. */
  readonly weights: Float64Array;
  /** Sum of the weights: the time that was observed. */
  readonly observed: number;
  /** Of each gap, the index of the reading after it. */
  readonly holes: readonly number[];
  readonly gaps: number;
  /** Seconds inside gaps, left out. */
  readonly gapTime: number;
  /** First and last line of the file with a reading; null without any. */
  readonly lines: readonly [number, number] | null;
}

/** A step longer than this many median steps is a gap, as intake tells gaps of the time axis, unless steps like it stand beside it. */
const GAP_STEPS = 5;
/** Steps looked at to each side, and how many of them may be gaps themselves. */
const BESIDE = 4;
const OTHER_GAPS = 1;

/**
 * Collects the readings of `values` (one per row, NaN = none) in `rows`. The weights are those of the trapezoidal rule, so
 * that a weighted mean times `observed` is the integral. Nothing is copied where no reading is missing. A log may change its step: what is
 * long beside the log's median step is no gap where the channel was read like that before or after.
 */
export function readingsOf(log: Log, values: Float64Array, rows: Rows): Readings {
  const { seconds } = log.time;
  const whole = values.subarray(rows.from, Math.max(rows.from, rows.to));
  const kept = whole.includes(Number.NaN) ? presentRows(values, rows) : null;
  const t = kept ? Float64Array.from(kept, (row) => seconds[row]!) : seconds.subarray(rows.from, rows.from + whole.length);
  const y = kept ? Float64Array.from(kept, (row) => values[row]!) : whole;
  const first = kept ? kept[0] : rows.from;
  const last = kept ? kept[kept.length - 1] : rows.to - 1;
  const lines = y.length === 0 ? null : ([log.lines[first!]!, log.lines[last!]!] as const);
  const step = log.joined ? usualStep(log, values) : log.time.step;
  const limit = (step ?? 0) * GAP_STEPS || Number.POSITIVE_INFINITY;
  return { t, y, ...weigh(t, limit), lines };
}

/**
 * Readings of one instant as one, their mean: a logger that writes a row twice, or stamps whole seconds only, has no more instants for it.
 * Returns what it was given where no instant stands twice.
 */
export function oneAnInstant(readings: Readings): Readings {
  const { t, y } = readings;
  const first: number[] = [];
  for (let i = 0; i < t.length; i++) if (i === 0 || t[i]! !== t[i - 1]!) first.push(i);
  if (first.length === t.length) return readings;
  const joined = (values: Float64Array) =>
    Float64Array.from(first, (from, k) => values.subarray(from, first[k + 1]).reduce((sum, value) => sum + value, 0));
  const sums = joined(y);
  return {
    ...readings,
    t: Float64Array.from(first, (from) => t[from]!),
    y: sums.map((sum, k) => sum / ((first[k + 1] ?? t.length) - first[k]!)),
    weights: joined(readings.weights),
    holes: readings.holes.map((hole) => first.indexOf(hole)),
  };
}

/** Median step between all readings of a channel of several logs: each log has its own. */
function usualStep({ time, rows }: Log, values: Float64Array): number | null {
  const kept = presentRows(values, { from: 0, to: rows });
  const steps = Array.from(kept.subarray(1), (row, i) => time.seconds[row]! - time.seconds[kept[i]!]!);
  return steps.length === 0 ? null : quantile(steps, 0.5);
}

function presentRows(values: Float64Array, rows: Rows): Int32Array {
  const kept = new Int32Array(rows.to - rows.from);
  let n = 0;
  for (let row = rows.from; row < rows.to; row++) if (!Number.isNaN(values[row]!)) kept[n++] = row;
  return kept.subarray(0, n);
}

function weigh(t: Float64Array, limit: number): Pick<Readings, 'weights' | 'observed' | 'holes' | 'gaps' | 'gapTime'> {
  const weights = new Float64Array(t.length);
  let observed = 0;
  const holes: number[] = [];
  let gapTime = 0;
  for (let i = 1; i < t.length; i++) {
    const width = t[i]! - t[i - 1]!;
    if (width > limit && width > GAP_STEPS * stepBeside(t, i)) {
      holes.push(i);
      gapTime += width;
      continue;
    }
    weights[i - 1]! += width / 2;
    weights[i] = width / 2;
    observed += width;
  }
  return { weights, observed, holes, gaps: holes.length, gapTime };
}

/** The step that the readings beside a step come in: the larger of what is usual in the four steps before it and in the four after it. */
export function stepBeside(t: Float64Array, i: number): number {
  const usual = (from: number, to: number): number => {
    const steps: number[] = [];
    for (let k = Math.max(1, from); k < Math.min(t.length, to); k++) steps.push(t[k]! - t[k - 1]!);
    return steps.length <= OTHER_GAPS ? 0 : steps.sort((a, b) => a - b)[OTHER_GAPS]!;
  };
  return Math.max(usual(i - BESIDE, i), usual(i + 1, i + 1 + BESIDE));
}
