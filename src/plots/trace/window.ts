/** The readings that lie in a part of the time axis. */
import type { Window } from '../drawing/lines/align.ts';
import type { Segment } from '../drawing/lines/segments.ts';
import type { StoredMeans, TraceReadings } from '../drawing/lines/trace-run.ts';

/**
 * Readings from `from` to `to`, s since `origin`, ends included. Where thinning dropped readings that repeat their neighbours across
 * an end of the window, the line reaches that end: what is repeated was read there too.
 */
export function readingsWithin(readings: TraceReadings, [from, to]: Window, origin: number): TraceReadings {
  const [low, high] = [from + origin, to + origin];
  const t: number[] = [];
  const y: number[] = [];
  const segments: Segment[] = [];
  for (const segment of readings.segments) {
    const inside = pointsWithin(readings, segment, low, high);
    if (inside.length === 0) continue;
    segments.push({ start: t.length, end: t.length + inside.length });
    t.push(...inside.map((point) => point[0]));
    y.push(...inside.map((point) => point[1]));
  }
  return {
    t: Float64Array.from(t),
    y: Float64Array.from(y),
    segments,
    count: t.length,
    means: readings.means === 'all' || readings.means === null ? readings.means : meansWithin(readings.means, low, high),
  };
}

type Point = readonly [t: number, y: number];

function pointsWithin({ t, y }: TraceReadings, { start, end }: Segment, low: number, high: number): Point[] {
  const first = firstAtLeast(t, low, start, end);
  const behind = firstAtLeast(t, high, start, end);
  const last = t[behind] === high && behind < end ? behind + 1 : behind;
  const points = Array.from({ length: Math.max(0, last - first) }, (_, i): Point => [t[first + i]!, y[first + i]!]);
  return [...repeatedAt(low, first), ...points, ...(low < high ? repeatedAt(high, last) : [])];

  /** The reading that both neighbours of a moment between two of them have; nothing where they differ. */
  function repeatedAt(moment: number, next: number): Point[] {
    const between = next > start && next < end && t[next - 1]! < moment && t[next]! > moment;
    return between && y[next - 1] === y[next] ? [[moment, y[next]!]] : [];
  }
}

/** First position from `start` whose time is not below a moment; `end` where there is none. */
function firstAtLeast(t: Float64Array, moment: number, start: number, end: number): number {
  let [low, high] = [start, end];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (t[middle]! < moment) low = middle + 1;
    else high = middle;
  }
  return low;
}

function meansWithin(stored: StoredMeans, low: number, high: number): StoredMeans {
  return { ...stored, means: stored.means.filter(({ x }) => x >= low && x <= high) };
}
