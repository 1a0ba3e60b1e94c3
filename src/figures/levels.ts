/** Stretches of a channel on its higher level: the loads of a log, told from the level of its power, utilisation, clock or current. */
import { quantile } from '../statistics/quantile.ts';
import type { EdgeRows } from './change-point.ts';

/** The two levels must lie this many within-level standard deviations apart, and differ by this share of the higher one. */
const SEPARATION = 3;
const LEAST_CHANGE = 0.1;
/** A change of level counts when the readings have been beyond the middle for as much as this long on the other level: s, … */
const LASTING = 60;
/** … or this share of the log where it is short, and three readings at least. */
const SHARE = 0.02;
const FEWEST = 3;
/** Where the levels are not known yet, a load is looked for from this share of the way from the lowest to the highest: a boost at its beginning may be far above it. */
const FIRST = 0.15;
/** A pause parts two loads when it lasts this share of the shorter of them, or longer. */
const PAUSE = 0.25;
/** A load rises over the lower level by this share of what the strongest one does, or more. */
const STRONG = 0.25;
const ROUNDS = 8;

/**
 * All stretches on the higher level, in order. Page's two-sided cumulative sum about the middle of both levels: the state changes where
 * the sum of departures to the other side has grown past its decision interval, and it changed where that sum last was zero. The levels
 * are re-estimated from inside and outside until the edges stay. O(n) a round; null when the levels do not stand apart.
 */
export function findLevels(seconds: Float64Array, values: Float64Array): readonly EdgeRows[] | null {
  const rows = Int32Array.from(values.keys()).filter((row) => !Number.isNaN(values[row]!));
  const y = Float64Array.from(rows, (row) => values[row]!);
  const enough = decisionInterval(seconds);
  const [low, high] = extremesOf(y);
  let levels: Pick<Levels, 'inside' | 'outside'> = { inside: high, outside: low };
  let middle = low + FIRST * (high - low);
  let before: readonly EdgeRows[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const loads = strong(merged(stretchesAbove(y, { ...levels, middle }, enough)), y, levels.outside);
    const found = levelsOf(y, loads);
    if (!found) return null;
    if (same(loads, before) || round === ROUNDS - 1)
      return standsApart(found) ? loads.map((load) => rowsOf(load, rows, values.length)) : null;
    before = loads;
    levels = found;
    middle = (found.inside + found.outside) / 2;
  }
  return null;
}

/** Rows on the other level after which a change counts. */
function decisionInterval(seconds: Float64Array): number {
  const span = (seconds[seconds.length - 1] ?? 0) - (seconds[0] ?? 0);
  const step = span / Math.max(1, seconds.length - 1);
  return Math.max(FEWEST, step > 0 ? Math.min(LASTING, SHARE * span) / step : FEWEST);
}

/** Lowest and highest mean of ten neighbouring readings, so that single spikes do not set them. */
function extremesOf(y: Float64Array): readonly [number, number] {
  const size = Math.max(1, Math.min(10, Math.floor(y.length / 20)));
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let start = 0; start + size <= y.length; start += size) {
    const mean = y.subarray(start, start + size).reduce((sum, value) => sum + value, 0) / size;
    low = Math.min(low, mean);
    high = Math.max(high, mean);
  }
  return [low, high];
}

interface Between {
  readonly inside: number;
  readonly outside: number;
  readonly middle: number;
}

/** Stretches above the middle, as indices of `y`; each departure counts as a share of the way to the level on its side. */
function stretchesAbove(y: Float64Array, { inside, outside, middle }: Between, enough: number): EdgeRows[] {
  const found: EdgeRows[] = [];
  const [up, down] = [inside - middle, middle - outside];
  if (!(up > 0 && down > 0)) return found;
  let loaded = false;
  let sum = 0;
  let turn = 0;
  let startRow = 0;
  for (let i = 0; i < y.length; i++) {
    const off = y[i]! - middle;
    const share = loaded ? -off / down : off / up;
    if (sum <= 0) turn = i;
    sum = Math.max(0, sum + share);
    if (sum < enough) continue;
    if (loaded) found.push({ startRow, endRow: turn });
    else startRow = turn;
    loaded = !loaded;
    sum = 0;
  }
  if (loaded) found.push({ startRow, endRow: sum > 0 ? turn : y.length });
  return found;
}

/** Joins loads whose pause is short beside them: the rests between the tests of one load. */
function merged(loads: readonly EdgeRows[]): readonly EdgeRows[] {
  const kept = [...loads];
  for (;;) {
    const share = (k: number) => {
      const [a, b] = [kept[k]!, kept[k + 1]!];
      return (b.startRow - a.endRow) / Math.min(a.endRow - a.startRow, b.endRow - b.startRow);
    };
    const pauses = kept.slice(1).map((_, k) => share(k));
    const shortest = Math.min(...pauses);
    if (!(shortest < PAUSE)) return kept;
    const k = pauses.indexOf(shortest);
    kept.splice(k, 2, { startRow: kept[k]!.startRow, endRow: kept[k + 1]!.endRow });
  }
}

/** Leaves out stretches that rise over the lower level by less than a share of what the strongest one does: work in the background. */
function strong(loads: readonly EdgeRows[], y: Float64Array, outside: number): readonly EdgeRows[] {
  const rises = loads.map(({ startRow, endRow }) => meanOf([y.subarray(startRow, endRow)]).mean - outside);
  const least = STRONG * Math.max(...rises);
  return loads.filter((_, k) => rises[k]! >= least);
}

interface Levels {
  /** Of the weakest load: an edge is looked for half way up to it, whatever the others take. */
  readonly inside: number;
  readonly outside: number;
  /** Standard deviation of readings about the middle of their own stretch: two loads may differ. */
  readonly within: number;
}

function levelsOf(y: Float64Array, loads: readonly EdgeRows[]): Levels | null {
  const pauses = [0, ...loads.map(({ endRow }) => endRow)].map((startRow, k) => ({
    startRow,
    endRow: loads[k]?.startRow ?? y.length,
  }));
  const [inside, outside] = [loads, pauses].map((stretches) =>
    stretches.filter(({ startRow, endRow }) => endRow > startRow).map(({ startRow, endRow }) => y.subarray(startRow, endRow)),
  );
  const [above, below] = [meanOf(inside!), meanOf(outside!)];
  if (above.n < 2 || below.n < 2) return null;
  const weakest = Math.min(...inside!.map((values) => meanOf([values]).mean));
  return { inside: weakest, outside: below.mean, within: scatterWithin([...inside!, ...outside!]) };
}

function meanOf(stretches: readonly Float64Array[]): { n: number; mean: number } {
  const n = stretches.reduce((count, { length }) => count + length, 0);
  return { n, mean: stretches.reduce((sum, values) => sum + values.reduce((total, value) => total + value, 0), 0) / n };
}

/** Median of |x| of a standard normal distribution. */
const MEDIAN_SIZE = 0.6744898;

/**
 * The smaller of the root mean square about each stretch's mean and of what the median size of departures from its median says: a boost at
 * the beginning and rests between the tests of a load are no scatter of its level.
 */
function scatterWithin(stretches: readonly Float64Array[]): number {
  const departures = (centre: (values: Float64Array) => number) =>
    stretches.flatMap((values) => {
      const middle = centre(values);
      return Array.from(values, (value) => Math.abs(value - middle));
    });
  const about = departures((values) => meanOf([values]).mean);
  const square = about.reduce((sum, off) => sum + off * off, 0) / Math.max(1, about.length - stretches.length);
  const typical = quantile(
    departures((values) => quantile(values, 0.5)),
    0.5,
  );
  return Math.min(Math.sqrt(square), typical / MEDIAN_SIZE);
}

function standsApart({ inside, outside, within }: Levels): boolean {
  const change = inside - outside;
  return change > SEPARATION * within && change > LEAST_CHANGE * Math.abs(inside);
}

function same(a: readonly EdgeRows[], b: readonly EdgeRows[]): boolean {
  return a.length === b.length && a.every(({ startRow, endRow }, k) => startRow === b[k]!.startRow && endRow === b[k]!.endRow);
}

/** Indices of readings as rows of the log. */
function rowsOf({ startRow, endRow }: EdgeRows, rows: Int32Array, all: number): EdgeRows {
  return { startRow: rows[startRow]!, endRow: endRow < rows.length ? rows[endRow]! : all };
}
