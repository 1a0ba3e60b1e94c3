/** How far the edges of a logged power lie behind the starts and ends that a table of scores states. */
import { mean } from '../../statistics/mean.ts';
import { sampleDeviation } from '../../statistics/sample-deviation.ts';
import { studentQuantile } from '../../statistics/student-quantile.ts';
import { firstRowAt } from '../phases.ts';

/** A stretch of the log in which a repeat ran, s since its first row. */
interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** A repeat with what no repeat ran in before and after it: half as long as itself at most. */
interface Placed extends Stretch {
  readonly before: number;
  readonly after: number;
}

/** Steps from no shift to half the length of a repeat, at most; four to a row. */
const STEPS = 60;
const PER_ROW = 4;
/** So many repeats tell by their scatter whether a shift is more than chance; of fewer it must show plainly. */
const ENOUGH = 3;
const CHANCE = 0.005;
/** Gains in contrast below these shares are of no account, or not plain. */
const SLIGHT = 0.01;
const PLAIN = 0.15;

export interface Lag {
  /** s; above zero where the power is behind the stated times, below where it is ahead of them; 0 where that does not show. */
  readonly seconds: number;
  /** s: how finely it was looked for. */
  readonly step: number;
}

/** Readings that there are, by time, with their sums between two moments. */
export class PowerInTime {
  readonly #seconds: Float64Array;
  readonly #values: Float64Array;
  readonly #sums: Float64Array;

  constructor(seconds: Float64Array, values: Float64Array) {
    const read = Array.from(values.keys()).filter((row) => Number.isFinite(values[row]!));
    this.#seconds = Float64Array.from(read, (row) => seconds[row]!);
    this.#values = Float64Array.from(read, (row) => values[row]!);
    this.#sums = new Float64Array(read.length + 1);
    for (let i = 0; i < read.length; i++) this.#sums[i + 1] = this.#sums[i]! + this.#values[i]!;
  }

  sum(from: number, to: number): { readonly sum: number; readonly n: number } {
    if (!(to > from)) return { sum: 0, n: 0 };
    const [first, end] = [firstRowAt(this.#seconds, from), firstRowAt(this.#seconds, to)];
    return { sum: this.#sums[end]! - this.#sums[first]!, n: end - first };
  }

  within(from: number, to: number): Float64Array {
    return to > from ? this.#values.slice(firstRowAt(this.#seconds, from), firstRowAt(this.#seconds, to)) : new Float64Array();
  }
}

/**
 * The shift of all repeats at which the power inside them stands out most from that in the pauses beside them, above it or below. It is told where the gain over no
 * shift is more than the repeats' scatter (Student’s t at 1 %), or plain with fewer than three; where several shifts do as well, it is the middle of them.
 * Repeats without a pause on either side have no edges, and tell nothing.
 */
export function lagOf(power: PowerInTime, repeats: readonly Stretch[], row: number): Lag {
  const placed = placedOf(repeats);
  const none = { seconds: 0, step: 0 };
  if (placed.length === 0 || !(row > 0)) return none;
  const lengths = placed.map(({ from, to }) => to - from).sort((a, b) => a - b);
  const reach = lengths[Math.floor(lengths.length / 2)]! / 2;
  const step = Math.max(row / PER_ROW, reach / STEPS);
  const still = contrasts(power, placed, 0);
  const level = meanOf(still);
  if (level === null) return none;
  const shifts = Array.from({ length: Math.floor(reach / step) }, (_, k) => k + 1).flatMap((k) => [k, -k]);
  const levels = shifts.map((shift) => meanOf(contrasts(power, placed, shift * step)));
  const own = level < 0 ? -1 : 1;
  const [up, down] = [bestOf(level, shifts, levels, own), bestOf(level, shifts, levels, -own)];
  const { sign, ...best } = placed.length >= ENOUGH && down.height > up.height ? { ...down, sign: -own } : { ...up, sign: own };
  const seconds = best.shift * step;
  if (seconds === 0) return none;
  const moved = contrasts(power, placed, seconds);
  const gains = moved.flatMap((value, k) => (value === null || still[k] === null ? [] : [sign * (value - still[k]!)]));
  return isReal(gains, best.height) ? { seconds, step } : none;
}

/** The shift with the highest contrast of one sign; zero where it does as well, else the middle of those to one side that do equally well. */
function bestOf(still: number, shifts: readonly number[], levels: readonly (number | null)[], sign: number) {
  let best = { height: sign * still, first: 0, last: 0 };
  levels.forEach((level, k) => {
    const [height, shift] = [level === null ? Number.NEGATIVE_INFINITY : sign * level, shifts[k]!];
    if (height > best.height) best = { height, first: shift, last: shift };
    else if (height === best.height && Math.sign(shift) === Math.sign(best.first)) best = { ...best, last: shift };
  });
  return { height: best.height, shift: (best.first + best.last) / 2 };
}

function isReal(gains: readonly number[], contrast: number): boolean {
  const n = gains.length;
  if (n === 0 || !(contrast > 0)) return false;
  const gain = mean(gains);
  if (n < ENOUGH) return gain > PLAIN * contrast;
  return gain > SLIGHT * contrast && gain > (studentQuantile(1 - CHANCE, n - 1) * sampleDeviation(gains)) / Math.sqrt(n);
}

/**
 * By how much the power changes where a repeat starts (of a lead, where it ends), mean over the repeats, W: a lag takes that times itself from the
 * energy of each. By the halves of the readings inside and beside that lie farthest apart: an average over some time smears both. A repeat that another adjoins there has no such edge.
 */
export function riseOf(power: PowerInTime, repeats: readonly Stretch[], all: readonly Stretch[], { seconds }: Lag): number {
  const wanted = new Set(repeats.map(({ from, to }) => `${from} ${to}`));
  const rises = placedOf(all)
    .filter(({ from, to }) => wanted.has(`${from} ${to}`))
    .map(({ from, to, before, after }) => {
      const inside = power.within(from + seconds, to + seconds).sort();
      const beside = seconds > 0 ? [before, from] : [to, after];
      const outside = power.within(beside[0]! + seconds, beside[1]! + seconds).sort();
      if (inside.length === 0 || outside.length === 0) return 0;
      return Math.max(upperMean(inside) - lowerMean(outside), upperMean(outside) - lowerMean(inside));
    });
  return rises.length === 0 ? 0 : rises.reduce((sum, rise) => sum + rise, 0) / repeats.length;
}

function upperMean(sorted: Float64Array): number {
  return mean(sorted.slice(-Math.ceil(sorted.length / 2)));
}

function lowerMean(sorted: Float64Array): number {
  return mean(sorted.slice(0, Math.ceil(sorted.length / 2)));
}

/** Each repeat with its pauses, by time; those without any are left out. */
function placedOf(repeats: readonly Stretch[]): readonly Placed[] {
  const sorted = repeats.toSorted((a, b) => a.from - b.from || a.to - b.to);
  let latest = Number.NEGATIVE_INFINITY;
  return sorted.flatMap(({ from, to }, k) => {
    const half = (to - from) / 2;
    const before = Math.min(from, Math.max(latest, from - half));
    const after = Math.max(to, Math.min(sorted[k + 1]?.from ?? Number.POSITIVE_INFINITY, to + half));
    latest = Math.max(latest, to);
    return before < from || after > to ? [{ from, to, before, after }] : [];
  });
}

/** Power inside each repeat less that in the pauses beside it, all moved by `shift`; null where one of them has no reading. */
function contrasts(power: PowerInTime, placed: readonly Placed[], shift: number): (number | null)[] {
  return placed.map(({ from, to, before, after }) => {
    const inside = power.sum(from + shift, to + shift);
    const [early, late] = [power.sum(before + shift, from + shift), power.sum(to + shift, after + shift)];
    const outside = early.n + late.n;
    return inside.n === 0 || outside === 0 ? null : inside.sum / inside.n - (early.sum + late.sum) / outside;
  });
}

function meanOf(values: readonly (number | null)[]): number | null {
  const told = values.filter((value) => value !== null);
  return told.length === 0 ? null : mean(told);
}
