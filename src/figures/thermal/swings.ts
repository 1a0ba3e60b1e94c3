/** Whether a temperature swings to and fro long after the load began: what a fan does that switches on and off, or a load that comes and goes. */
import { autocorrelation } from '../../statistics/autocorrelation.ts';
import type { Readings } from '../readings.ts';
import { lateCourse } from './late-course.ts';

export interface Swing {
  /** s. */
  readonly period: number;
  /** From crest to trough, in the unit of the readings: of a saw with their scatter. */
  readonly height: number;
}

/** Swings are looked for behind the first quarter of a load, where it climbs most. */
const LATE = { share: 3 / 4, longest: Number.POSITIVE_INFINITY };
/** As many points as tell a swing, and few enough to be quick. */
const POINTS = 240;
const FEWEST = 24;
/** The late part holds so many swings at least. */
const SWINGS = 4;
/** Correlation half a swing on, a whole one, and one and a half: noise that lasts correlates with its past, not against it. */
const APART = -0.4;
const AGAIN = 0.5;
const ONCE_MORE = -0.33;
/** How exactly the swings follow each other, as a share of half a swing. */
const REGULAR = 0.35;

/**
 * The swing of the late readings of a load about their slow course, or null: their correlation is far below zero half a swing on, far above it
 * a whole swing on, and below it again one and a half on (autocorrelation function: common practice, no source for the limits, which were tried on simulated noise).
 */
export function swingOf(readings: Pick<Readings, 't' | 'y'>): Swing | null {
  const late = lateCourse(readings, { part: LATE });
  if (!late) return null;
  const values = thinned(late.residuals);
  const n = values.length;
  if (n < FEWEST) return null;
  const variance = values.reduce((sum, value) => sum + value * value, 0) / n;
  if (variance === 0) return null;
  const longest = Math.floor(n / SWINGS / 2);
  const r = Float64Array.from(
    { length: Math.min(n - 1, Math.ceil((3 + REGULAR) * longest)) + 1 },
    (_, lag) => (autocorrelation(values, lag) * n) / (n - lag),
  );
  // The first trough: the first lag from which the correlation climbs again.
  let half = 1;
  while (half < longest && (r[half]! > APART || r[half + 1]! < r[half]!)) half++;
  if (half >= longest || half < 2) return null;
  const from = (halves: number) => Math.floor((halves - REGULAR) * half);
  const about = (halves: number) => r.subarray(from(halves), Math.ceil((halves + REGULAR) * half) + 1);
  const again = Math.max(...about(2));
  if (again < AGAIN || Math.min(...about(3)) > ONCE_MORE) return null;
  const whole = from(2) + about(2).indexOf(again);
  return { period: (whole * late.length) / n, height: Math.sqrt(12 * variance) };
}

/** Means of neighbours, so that few enough remain. */
function thinned(values: Float64Array): Float64Array {
  const each = Math.ceil(values.length / POINTS);
  return Float64Array.from({ length: Math.floor(values.length / each) }, (_, k) => {
    let sum = 0;
    for (let i = k * each; i < (k + 1) * each; i++) sum += values[i]!;
    return sum / each;
  });
}
