/** Readings that a log holds more than once: rows written twice, and a sensor that is refreshed more slowly than it is logged. */
import { oneAnInstant, type Readings } from './readings.ts';
import { scatterOf } from './scatter.ts';

/** Fewer changes than this may fall on every second row by chance. */
const FEWEST_CHANGES = 20;

/**
 * One reading an instant; and, where the sensor holds each reading for the same time, the first row of each. That is seen where readings change
 * at every k-th row alone, or, where the time is no multiple of the log's step, after k rows or k + 1; and though they scatter by half a step of
 * the sensor or more, so that none would stay the same for long by itself. Returns what it was given where neither is so. `step` in the unit of y.
 */
export function freshReadings(readings: Readings, step: number): Readings {
  const each = oneAnInstant(readings);
  const first = heldFrom(each.y);
  if (first === null) return each;
  const thin = takenAt(each, first);
  return scatterOf(thin.y).deviation < step / 2 ? each : thin;
}

/** The first row of each reading that was held; null where readings change at any row, or seldom. */
function heldFrom(y: Float64Array): readonly number[] | null {
  const changes = [...y.keys()].filter((i) => i > 0 && y[i] !== y[i - 1]);
  if (changes.length < FEWEST_CHANGES) return null;
  const lengths = changes.slice(1).map((row, k) => row - changes[k]!);
  const rows = lengths.reduce(commonDivisor);
  if (rows > 1) return [...y.keys()].filter((i) => i === 0 || i % rows === changes[0]! % rows);
  const shortest = lengths.reduce((least, length) => Math.min(least, length));
  const once = lengths.filter((length) => length <= shortest + 1).length;
  // A longer one is two readings that came out equal, or more.
  const whole = lengths.every((length) => length <= shortest + 1 || length >= 2 * shortest);
  return shortest > 1 && whole && 2 * once > lengths.length ? [0, ...changes] : null;
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}

/** The readings of these rows, each for all of the time to the next. */
function takenAt(readings: Readings, first: readonly number[]): Readings {
  const { y } = readings;
  const taken = (values: Float64Array) => Float64Array.from(first, (i) => values[i]!);
  const group = (hole: number) => first.findIndex((_, k) => (first[k + 1] ?? y.length) > hole);
  return {
    ...readings,
    t: taken(readings.t),
    y: taken(y),
    weights: Float64Array.from(first, (from, k) =>
      readings.weights.subarray(from, first[k + 1]).reduce((sum, each) => sum + each, 0),
    ),
    holes: [...new Set(readings.holes.map(group))],
  };
}
