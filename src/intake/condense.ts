/** Rows of a log of any length in bounded memory: as long as they fit, each as it is; beyond that, neighbours as one, at their mean. */
import type { Channel, Condensed } from './log.ts';
import { roundNano } from './time/read-time.ts';

/** Rows up to which a log is kept row by row, and how many are left of one that has more. */
export interface RowLimits {
  readonly keep: number;
  readonly leave: number;
}

/** Figures take memory in proportion to the rows; what is left of a longer log than this takes a sixteenth of it. */
const LIMITS: RowLimits = { keep: 2 ** 20, leave: 2 ** 16 };

export interface CondensedRows {
  readonly lines: Int32Array;
  readonly seconds: Float64Array;
  /** One array a channel. */
  readonly values: readonly Float64Array[];
  /** Absent where every row was kept. */
  readonly condensed?: Condensed;
  /** Whether rows followed each other at one step, gaps aside: only then is the mean of rows that of the time. */
  readonly even: boolean;
}

export interface Condenser {
  /** Adds a row. `gap` says that no row is there for a long time before it. */
  readonly add: (line: number, second: number, readings: (channel: number) => number, gap: boolean) => void;
  readonly rows: () => number;
  readonly finish: () => CondensedRows;
}

/**
 * Takes rows in order. Of more than `keep`, neighbours are joined in pairs, again and again, until `leave` are left: time and readings at the mean of their rows, flags
 * with every bit that one of them sets, so that no throttling is lost. The first and the last row stay alone, and no pair reaches over a gap,
 * so that at an even step the integral over time stays what it is. A row without a reading has no weight in its channel.
 */
export function condenser(channels: readonly Pick<Channel, 'quantity'>[], { keep, leave }: RowLimits = LIMITS): Condenser {
  let most = keep;
  let lines = new Int32Array(FIRST_ROWS);
  let seconds = new Float64Array(FIRST_ROWS);
  let counts = new Uint32Array(FIRST_ROWS);
  let gaps = new Uint8Array(FIRST_ROWS);
  let values = channels.map(() => new Float64Array(FIRST_ROWS));
  /** Readings behind each value. */
  let weights = channels.map(() => new Uint32Array(FIRST_ROWS));
  const steps = stepWatch();
  const join = channels.map(({ quantity }) => (quantity === 'throttle_flag' ? eitherBits : meanOf));
  let count = 0;
  let rows = 0;
  let longest = 1;
  /** Blocks of this many rows are joined out of neighbours of half as many; the block at the end grows row by row. */
  let size = 1;

  const resize = (length: number) => {
    lines = resized(lines, new Int32Array(length));
    seconds = resized(seconds, new Float64Array(length));
    counts = resized(counts, new Uint32Array(length));
    gaps = resized(gaps, new Uint8Array(length));
    values = values.map((column) => resized(column, new Float64Array(length)));
    weights = weights.map((column) => resized(column, new Uint32Array(length)));
  };
  const move = (from: number, to: number) => {
    lines[to] = lines[from]!;
    seconds[to] = seconds[from]!;
    counts[to] = counts[from]!;
    gaps[to] = gaps[from]!;
    for (const column of [...values, ...weights]) column[to] = column[from]!;
  };
  const merge = (into: number, from: number) => {
    const [a, b] = [counts[into]!, counts[from]!];
    seconds[into] = meanOf(seconds[into]!, seconds[from]!, a, b);
    for (const [k, column] of values.entries()) {
      const weight = weights[k]!;
      column[into] = join[k]!(column[into]!, column[from]!, weight[into]!, weight[from]!);
      weight[into]! += weight[from]!;
    }
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
      if (count + 1 >= lines.length && lines.length < most) resize(Math.min(most, 2 * lines.length));
      if (count > most - 2) {
        most = leave;
        while (count > most - 2) halve();
        if (lines.length > most) resize(most);
      }
      rows++;
      lines[count] = line;
      seconds[count] = second;
      counts[count] = 1;
      gaps[count] = gap ? 1 : 0;
      for (let k = 0; k < values.length; k++) {
        const reading = readings(k);
        values[k]![count] = reading;
        weights[k]![count] = Number.isNaN(reading) ? 0 : 1;
      }
      steps.see(second, gap);
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
      even: steps.even(),
    }),
  };
}

/** Steps that the step of the log is told from, as their median. */
const TELLING = 1000;
/** A step may be so far from it, as a share, and so many of all steps further. */
const NEAR = 0.25;
const MOST_OTHERS = 0.01;

function stepWatch() {
  const first: number[] = [];
  let [last, usual, seen, others] = [Number.NaN, Number.NaN, 0, 0];
  const judge = (step: number) => {
    seen++;
    if (!(Math.abs(step - usual) <= NEAR * usual)) others++;
  };
  return {
    see: (second: number, gap: boolean) => {
      const step = second - last;
      last = second;
      if (gap || Number.isNaN(step)) return;
      if (first.length < TELLING) {
        first.push(step);
        if (first.length === TELLING) {
          usual = first.toSorted((a, b) => a - b)[TELLING / 2]!;
          first.forEach(judge);
        }
      } else judge(step);
    },
    even: () => others <= MOST_OTHERS * seen,
  };
}

/** Rows that there is room for at first. */
const FIRST_ROWS = 1024;

/** The array `to` with what fits into it of the other. */
function resized<T extends Int32Array | Uint32Array | Float64Array | Uint8Array>(from: T, to: T): T {
  to.set(from.subarray(0, to.length));
  return to;
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
