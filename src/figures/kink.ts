/** Bends of a slow series: where a temperature starts to climb and where it starts to fall. */
import type { EdgeRows } from './change-point.ts';
import { scatterOf } from './scatter.ts';

/** A bend counts when the two lines differ over their length by this many times the scatter about them, and by this much, K. */
const SIGNIFICANT = 6;
const LEAST_BEND = 2;

/** Another load must bend the course by this share of what the sharpest one does, up and down. */
const ANOTHER = 0.5;

/**
 * Finds the sharpest upward bend (a load begins) and the sharpest downward bend after it (it ends; else the end), then others before and
 * after these. At each row a line is fitted to the stretch before and to the stretch after it, each a minute or five readings long; the
 * bend is the difference of their slopes. O(n) by running sums, for each load found; null when no bend stands out.
 */
export function findKinks(seconds: Float64Array, values: Float64Array): readonly EdgeRows[] | null {
  const { rows, t, y } = present(seconds, values);
  const half = halfLength(t);
  if (t.length < 4 * half) return null;
  const slope = slopesOf(t, y, half);
  const length = (t[t.length - 1]! - t[0]!) * (half / t.length);
  const least = Math.max(LEAST_BEND, SIGNIFICANT * scatterOf(y).deviation) / length;
  const loads = loadsIn({ slope, half, least }, half, t.length, least, false);
  if (loads.length === 0) return null;
  const endOf = (down: number) => rows[lastOfClimb(y, down, Math.max(1, Math.round(half / NEAR)))]!;
  return loads.map(({ up, down }) => ({ startRow: rows[up]!, endRow: down === null ? seconds.length : endOf(down) }));
}

/** The peak is looked for in this part of a line behind the bend. */
const NEAR = 4;

/**
 * The first reading after a load whose course bends down at `down`. The reading at the bend stands on both lines: where it, or one right
 * behind it, is the highest there, it is the load's last, and its peak.
 */
function lastOfClimb(y: Float64Array, down: number, near: number): number {
  let highest = down - 1;
  for (let k = down; k <= Math.min(down + near, y.length - 2); k++) if (y[k]! > y[highest]!) highest = k;
  return Math.max(down, highest + 1);
}

interface Course {
  readonly slope: Float64Array;
  /** Readings in one line. */
  readonly half: number;
  /** A bend less sharp than this is none, K/s. */
  readonly least: number;
}

interface Bends {
  readonly up: number;
  readonly upBend: number;
  /** Null where the load runs to the end. */
  readonly down: number | null;
}

/** The sharpest load between two readings, and others to both sides of it; `leastUp`: how sharply one must begin, `ends`: whether it must end. */
function loadsIn(course: Course, from: number, to: number, leastUp: number, ends: boolean): Bends[] {
  const found = sharpest(course, from, to, leastUp);
  if (!found || (ends && found.down === null)) return [];
  const another = Math.max(leastUp, ANOTHER * found.upBend);
  return [
    ...loadsIn(course, from, found.up - course.half, another, true),
    found,
    ...(found.down === null ? [] : loadsIn(course, found.down + course.half, to, another, ends)),
  ];
}

/** The sharpest bend upwards into a climb, and the sharpest one downwards into a fall after it; null where none is sharp enough. */
function sharpest({ slope, half, least }: Course, from: number, to: number, leastUp: number): Bends | null {
  let up = -1;
  let upBend = leastUp;
  for (let k = from; k + half <= to; k++) {
    const bend = slope[k]! - slope[k - half]!;
    if (bend > upBend && slope[k]! > 0) [up, upBend] = [k, bend];
  }
  if (up < 0) return null;
  let down: number | null = null;
  let downBend = -Math.max(least, upBend / 4);
  for (let k = up + half; k + half <= to; k++) {
    const bend = slope[k]! - slope[k - half]!;
    const falls = slope[k]! < 0;
    if (falls && bend < downBend) [down, downBend] = [k, bend];
  }
  return { up, upBend, down };
}

function present(seconds: Float64Array, values: Float64Array): { rows: Int32Array; t: Float64Array; y: Float64Array } {
  const rows = Int32Array.from(values.keys()).filter((row) => !Number.isNaN(values[row]!));
  return { rows, t: Float64Array.from(rows, (row) => seconds[row]!), y: Float64Array.from(rows, (row) => values[row]!) };
}

/** Readings in one line: those of a minute, five at least. */
function halfLength(t: Float64Array): number {
  const span = (t[t.length - 1] ?? 0) - (t[0] ?? 0);
  return Math.max(5, span > 0 ? Math.round((60 * t.length) / span) : 5);
}

/** Slope of the least-squares line through `length` readings from each index on. */
function slopesOf(t: Float64Array, y: Float64Array, length: number): Float64Array {
  const slopes = new Float64Array(t.length);
  const [t0, y0] = [t[0]!, y[0]!];
  let [st, sy, stt, sty] = [0, 0, 0, 0];
  for (let i = 0; i < t.length; i++) {
    const [a, b] = [t[i]! - t0, y[i]! - y0];
    st += a;
    sy += b;
    stt += a * a;
    sty += a * b;
    const start = i - length + 1;
    if (start < 0) continue;
    const spread = stt - (st * st) / length;
    slopes[start] = spread > 0 ? (sty - (st * sy) / length) / spread : 0;
    const [c, d] = [t[start]! - t0, y[start]! - y0];
    st -= c;
    sy -= d;
    stt -= c * c;
    sty -= c * d;
  }
  return slopes;
}
