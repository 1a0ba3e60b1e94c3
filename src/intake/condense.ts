/** Rows of a log of any length in bounded memory: as long as they fit, each as it is; beyond that, neighbours as one, at their mean. */
import type { Channel, Condensed } from './log.ts';
import { roundNano } from './time/read-time.ts';

/** Most rows that are kept each for itself. */
const MOST_ROWS = 2 ** 18;

export interface CondensedRows {
  readonly lines: Int32Array;
  readonly seconds: Float64Array;
  /** One array a channel. */
  readonly values: readonly Float64Array[];
  /** Absent where every row was kept. */
  readonly condensed?: Condensed;
}

export interface Condenser {
  /** Adds a row. `gap` says that no row is there for a long time before it. */
  readonly add: (line: number, second: number, readings: (channel: number) => number, gap: boolean) => void;
  readonly rows: () => number;
  readonly finish: () => CondensedRows;
}

/**
 * Takes rows in order. Of more than `most`, neighbours are joined in pairs, again and again: time and readings at the mean of their rows, flags
 * with every bit that one of them sets, so that no throttling is lost. The first and the last row stay alone, and no pair reaches over a gap,
 * so that the integral over time stays what it is.
 */
export function condenser(channels: readonly Pick<Channel, 'quantity'>[], most = MOST_ROWS): Condenser {
  let lines = new Int32Array(FIRST_ROWS);
  let seconds = new Float64Array(FIRST_ROWS);
  let counts = new Float64Array(FIRST_ROWS);
  let gaps = new Uint8Array(FIRST_ROWS);
  let values = channels.map(() => new Float64Array(FIRST_ROWS));
  const join = channels.map(({ quantity }) => (quantity === 'throttle_flag' ? eitherBits : meanOf));
  let count = 0;
  let rows = 0;
  let longest = 1;
  /** Blocks of this many rows are joined out of neighbours of half as many; the block at the end grows row by row. */
  let size = 1;

  const grow = () => {
    const length = Math.min(most, 2 * lines.length);
    lines = longer(lines, new Int32Array(length));
    seconds = longer(seconds, new Float64Array(length));
    counts = longer(counts, new Float64Array(length));
    gaps = longer(gaps, new Uint8Array(length));
    values = values.map((column) => longer(column, new Float64Array(length)));
  };
  const move = (from: number, to: number) => {
    lines[to] = lines[from]!;
    seconds[to] = seconds[from]!;
    counts[to] = counts[from]!;
    gaps[to] = gaps[from]!;
    for (const column of values) column[to] = column[from]!;
  };
  const merge = (into: number, from: number) => {
    const [a, b] = [counts[into]!, counts[from]!];
    seconds[into] = meanOf(seconds[into]!, seconds[from]!, a, b);
    for (const [k, column] of values.entries()) column[into] = join[k]!(column[into]!, column[from]!, a, b);
    counts[into] = a + b;
    longest = Math.max(longest, a + b);
  };
  const halve = () => {
    size *= 2;
    // A log that is mostly gaps has none worth keeping.
    if (size > 2 * rows) gaps.fill(0);
    let kept = 1;
    for (let at = 1; at < count; at++) {
      const fits = kept > 1 && gaps[at] === 0 && counts[kept - 1]! + counts[at]! <= size;
      if (fits) merge(kept - 1, at);
      else move(at, kept++);
    }
    count = kept;
  };
  return {
    rows: () => rows,
    add: (line, second, readings, gap) => {
      if (count + 1 >= lines.length && lines.length < most) grow();
      while (count > most - 2) halve();
      rows++;
      lines[count] = line;
      seconds[count] = second;
      counts[count] = 1;
      gaps[count] = gap ? 1 : 0;
      for (let k = 0; k < values.length; k++) values[k]![count] = readings(k);
      count++;
      // The row before the last joins its block only now, so that the last row of all stays alone.
      if (size === 1 || count < 4) return;
      const [into, from] = [count - 3, count - 2];
      if (gaps[from] === 1 || counts[into]! + counts[from]! > size) return;
      merge(into, from);
      move(count - 1, from);
      count--;
    },
    finish: () => ({
      lines: lines.slice(0, count),
      seconds: seconds.slice(0, count).map(roundNano),
      values: values.map((column) => column.slice(0, count)),
      ...(longest > 1 ? { condensed: { rows, longest } } : {}),
    }),
  };
}

/** Rows that there is room for at first. */
const FIRST_ROWS = 1024;

function longer<T extends Int32Array | Float64Array | Uint8Array>(short: T, long: T): T {
  long.set(short);
  return long;
}

/** Where one of two has no reading, the other's. */
function meanOf(a: number, b: number, weightA: number, weightB: number): number {
  if (Number.isNaN(a)) return b;
  return Number.isNaN(b) ? a : a + (b - a) * (weightB / (weightA + weightB));
}

/** Beyond 32 bits, where JavaScript's own operators end. */
const HALF = 2 ** 32;

function eitherBits(a: number, b: number): number {
  if (a === b || Number.isNaN(b)) return a;
  if (Number.isNaN(a)) return b;
  const high = (Math.floor(a / HALF) | Math.floor(b / HALF)) >>> 0;
  return high * HALF + (((a % HALF) | (b % HALF)) >>> 0);
}
