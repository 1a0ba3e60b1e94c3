/** A smoothed course on an even grid of times, which knows where nothing was read. */
import { stepBeside } from '../readings.ts';
import { movingMean, smoothingSpan } from '../smooth.ts';
import type { Sampled } from './load-series.ts';

/** Values at even times. Where nothing was read they are on the straight line between the readings beside, and may lie anywhere between these. */
export interface EvenCourse {
  /** Seconds since the load began, evenly spaced. */
  readonly t: Float64Array;
  /** Smoothed; NaN before the first reading and after the last. */
  readonly y: Float64Array;
  /** 1 where it was read, 0 in a hole. */
  readonly seen: Uint8Array;
  /** Greatest and least value that a slow course may have had: those of the readings beside a hole; infinite where there is none on one side. */
  readonly upper: Float64Array;
  readonly lower: Float64Array;
  /** Seconds between two times. */
  readonly step: number;
  /** Seconds between the readings beside each time, where nothing is missing: more than `step` where the logger went more slowly. */
  readonly spacing: Float64Array;
  /** Seconds that the smoothing reaches over. */
  readonly span: number;
  /** Share of the grid that lies in holes. */
  readonly unseen: number;
}

/** Readings further apart than this many steps leave a hole, of the log and of the readings beside: a single one that is missing does not, nor does a logger that changes its pace. */
const HOLE_STEPS = 2.5;
/** Finer than this share of the load no time is looked for: a long log stays quick. */
const FINEST = 1 / 20_000;

/** Smooths the readings under load for a window of that many seconds, and puts them on even times from the load's beginning to its end. */
export function evenCourse(series: Sampled, window: number): EvenCourse {
  const { t, readings, lasted, length } = series;
  const span = smoothingSpan(series.step, window);
  const smooth = movingMean(t, readings.y, span);
  const hole = HOLE_STEPS * series.step || Number.POSITIVE_INFINITY;
  const isHole = (width: number, after: number) => width > hole && width > HOLE_STEPS * stepBeside(t, after);
  const first = isHole(t[0]!, 0) ? 0 : t[0]!;
  const last = isHole(length - lasted, t.length) ? length : lasted;
  const step = Math.max(series.step, (last - first) * FINEST) || 1;
  const n = Math.max(1, Math.floor((last - first) / step + 1e-6) + 1);
  const even = {
    t: Float64Array.from({ length: n }, (_, i) => first + i * step),
    y: new Float64Array(n),
    seen: new Uint8Array(n),
    upper: new Float64Array(n),
    lower: new Float64Array(n),
    spacing: new Float64Array(n),
  };
  let next = 0;
  let unseen = 0;
  for (let i = 0; i < n; i++) {
    const at = even.t[i]!;
    while (next < t.length && t[next]! < at - 1e-6) next++;
    const point = between(t, smooth, next, at, isHole);
    even.y[i] = point.y;
    even.upper[i] = point.upper;
    even.lower[i] = point.lower;
    even.seen[i] = point.seen ? 1 : 0;
    even.spacing[i] = Math.max(step, point.spacing);
    if (!point.seen) unseen++;
  }
  return { ...even, step, span, unseen: unseen / n };
}

interface Point {
  readonly y: number;
  readonly upper: number;
  readonly lower: number;
  readonly seen: boolean;
  /** Seconds between the readings beside it; 0 on a reading and in a hole. */
  readonly spacing: number;
}

const NOTHING: Point = {
  y: Number.NaN,
  upper: Number.POSITIVE_INFINITY,
  lower: Number.NEGATIVE_INFINITY,
  seen: false,
  spacing: 0,
};

/** The course at a time, given the first reading at or after it. */
function between(
  t: Float64Array,
  y: Float64Array,
  next: number,
  at: number,
  isHole: (width: number, after: number) => boolean,
): Point {
  const right = y[next];
  if (right !== undefined && t[next]! - at <= 1e-6) return { y: right, upper: right, lower: right, seen: true, spacing: 0 };
  const left = y[next - 1];
  if (left === undefined || right === undefined) return NOTHING;
  const width = t[next]! - t[next - 1]!;
  const value = left + ((right - left) * (at - t[next - 1]!)) / width;
  if (!isHole(width, next)) return { y: value, upper: value, lower: value, seen: true, spacing: width };
  return { y: value, upper: Math.max(left, right), lower: Math.min(left, right), seen: false, spacing: 0 };
}
