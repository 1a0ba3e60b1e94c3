/** Readings that a log holds more than once: rows written twice, and a sensor that is refreshed more slowly than it is logged. */
import { oneAnInstant, type Readings } from './readings.ts';
import { scatterOf } from './scatter.ts';

/** Fewer changes than this may fall on every second row by chance. */
const FEWEST_CHANGES = 20;

/**
 * One reading an instant; and, where the sensor holds each reading for the same number of rows, the first row of each. That is seen where
 * readings change at every k-th row alone though they scatter by half a step of the sensor or more, so that none would stay the same for long by
 * itself. Returns what it was given where neither is so. `step` in the unit of y.
 */
export function freshReadings(readings: Readings, step: number): Readings {
  const each = oneAnInstant(readings);
  const held = heldFor(each.y);
  if (held === null) return each;
  const thin = everyHeld(each, held);
  return scatterOf(thin.y).deviation < step / 2 ? each : thin;
}

interface Held {
  /** Rows that a reading is held for. */
  readonly rows: number;
  /** Row, below that number, at which readings change. */
  readonly at: number;
}

/** null where readings change at any row, or seldom. */
function heldFor(y: Float64Array): Held | null {
  let first = -1;
  let changes = 0;
  let rows = 0;
  for (let i = 1; i < y.length; i++) {
    if (y[i] === y[i - 1]) continue;
    if (first < 0) first = i;
    rows = commonDivisor(i - first, rows);
    changes++;
    if (rows === 1) return null;
  }
  return changes >= FEWEST_CHANGES && rows > 1 ? { rows, at: first % rows } : null;
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}

/** The first reading of each time that one was held, for all of it. */
function everyHeld(readings: Readings, { rows, at }: Held): Readings {
  const { y } = readings;
  const first = Array.from(y.keys()).filter((i) => i === 0 || i % rows === at);
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
