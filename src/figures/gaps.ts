/** What may have happened in the gaps of a log: guessed from the readings about them, and as uncertain as such guesses prove elsewhere in it. */
import type { Part } from '../quantities/quantity.ts';
import { log } from '../statistics/elementary.ts';
import { welchSatterthwaite } from '../statistics/welch-satterthwaite.ts';
import type { Of, Reason } from './absent.ts';
import { counted, duration } from './in-words.ts';
import type { Readings } from './readings.ts';
import type { Soak } from './soak.ts';

/** Seconds since the log's first row. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

export interface Filled {
  /** Integral over all gaps, unit of the readings times s; its standard uncertainty, and the degrees of freedom of that. */
  readonly integral: number;
  readonly u: number;
  readonly dof: number;
  /** Seconds in gaps, and how many there are. */
  readonly seconds: number;
  readonly count: number;
}

/** The longest gap for which the logged parts hold too few stretches to try the guess on. */
export interface Unfilled {
  readonly longest: number;
  readonly seconds: number;
}

const NO_GAPS: Filled = { integral: 0, u: 0, dof: Number.POSITIVE_INFINITY, seconds: 0, count: 0 };

/** A gap is guessed from the readings of so many seconds to each side at most, from half its length, and from so many readings at least. */
const SIDE = 120;
const FEWEST = 3;
/** The guess is tried on so many disjoint stretches at least. */
const TRIALS = 3;
/** Gaps whose lengths differ by less than this share are tried as one length, the longer one. */
const ALIKE = 1.1;
/** Levels about a gap that differ by so many times what they do elsewhere over such a time changed in the gap. */
const STANDS_OUT = 4;
/** A trial begins after each such part of the gap's length. */
const EVERY = 1 / 8;
/** At the edges of a span the first and the last reading stand for up to this many steps of their own. */
const REACH = 2;

/** A stretch without readings between readings `before` and `after`; −1 and n where it lies at an edge of the span. */
interface Gap extends Span {
  readonly before: number;
  readonly after: number;
}

/**
 * Fills the gaps of a stretch, and what its `span` reaches beyond the first and the last reading. The guess for a gap of length G is the mean of
 * the readings about it (of one side at an edge); the same guess is made for stretches of length G that were logged, and its
 * mean square error there, times 1 + 1/m for m disjoint stretches, is its variance (leave-out check: common practice, no source). It holds
 * where what happened in the gap also happened elsewhere: a load that paused in the gap alone leaves no trace. A level that differs after the
 * gap, and moves nowhere else as far in such a time, changed somewhere in it: the difference times the gap's length over √12 (rectangular) is added.
 */
export function fillGaps(readings: Readings, span: Span | null): Filled | Unfilled {
  const gaps = gapsIn(readings, span);
  if (gaps.length === 0) return NO_GAPS;
  const seconds = gaps.reduce((sum, gap) => sum + gap.to - gap.from, 0);
  const { t, y } = readings;
  const sums = { y: runningSum(y), area: runningArea(t, y) };
  const runs = runsOf(readings);
  const byLength = new Map<string, { readonly trials: Trials; squares: number }>();
  let [integral, changed] = [0, 0];
  for (const gap of gaps) {
    const length = gap.to - gap.from;
    const side = gap.before < 0 ? 'after' : gap.after >= t.length ? 'before' : 'both';
    const grown = ALIKE ** Math.ceil(log(length) / log(ALIKE) - 1e-9);
    const key = `${side} ${grown}`;
    const known = byLength.get(key) ?? { trials: tried(t, sums, runs, grown, side), squares: 0 };
    if (known.trials.m < TRIALS) return { longest: length, seconds };
    known.squares += length ** 2;
    byLength.set(key, known);
    const [own, moved] = guess(t, sums, runs, gap);
    integral += length * own;
    if (moved ** 2 > STANDS_OUT ** 2 * known.trials.moved) changed += (length * moved) ** 2 / 12;
  }
  const terms = [...byLength.values()].map(({ trials: { meanSquare, m }, squares }) => ({
    u: Math.sqrt(squares * meanSquare * (1 + 1 / m)),
    dof: m,
  }));
  terms.push({ u: Math.sqrt(changed), dof: Number.POSITIVE_INFINITY });
  const u = Math.sqrt(terms.reduce((sum, term) => sum + term.u ** 2, 0));
  return { integral, u, dof: welchSatterthwaite(terms), seconds, count: gaps.length };
}

export function isFilled(outcome: Filled | Unfilled): outcome is Filled {
  return 'integral' in outcome;
}

function gapsIn({ t, holes }: Readings, span: Span | null): readonly Gap[] {
  const n = t.length;
  const inner = holes.map((after) => ({ before: after - 1, after, from: t[after - 1]!, to: t[after]! }));
  if (!span || n === 0) return inner;
  const edges: Gap[] = [];
  if (t[0]! - span.from > reachOf({ t, holes }, 'first')) edges.push({ before: -1, after: 0, from: span.from, to: t[0]! });
  if (span.to - t[n - 1]! > reachOf({ t, holes }, 'last')) edges.push({ before: n - 1, after: n, from: t[n - 1]!, to: span.to });
  return [...inner, ...edges];
}

/** How far the first or the last reading stands for what lies beyond it, s: two steps of its own. */
export function reachOf({ t, holes }: Pick<Readings, 't' | 'holes'>, which: 'first' | 'last'): number {
  // Instants may stand twice.
  const after = which === 'first' ? t.findIndex((time) => time > t[0]!) : t.findLastIndex((_, i) => i > 0 && t[i]! > t[i - 1]!);
  return after < 1 || holes.includes(after) ? 0 : REACH * (t[after]! - t[after - 1]!) + 1e-9;
}

/** Stretches of readings without a gap: first index, and one past the last. */
interface Run {
  readonly first: number;
  readonly end: number;
}

function runsOf({ t, holes }: Readings): readonly Run[] {
  const starts = [0, ...holes];
  return starts.map((first, k) => ({ first, end: starts[k + 1] ?? t.length }));
}

interface Sums {
  /** Of readings before each index. */
  readonly y: Float64Array;
  /** Integral from the first reading to each, across gaps too. */
  readonly area: Float64Array;
}

function runningSum(y: Float64Array): Float64Array {
  const sums = new Float64Array(y.length + 1);
  for (let i = 0; i < y.length; i++) sums[i + 1] = sums[i]! + y[i]!;
  return sums;
}

function runningArea(t: Float64Array, y: Float64Array): Float64Array {
  const area = new Float64Array(y.length);
  for (let i = 1; i < y.length; i++) area[i] = area[i - 1]! + ((t[i]! - t[i - 1]!) * (y[i]! + y[i - 1]!)) / 2;
  return area;
}

/** Mean of the readings up to `last`, from `seconds` before it on, three at least, none before `first`. */
function meanBefore(t: Float64Array, sums: Sums, first: number, last: number, seconds: number): number {
  let from = last;
  while (from > first && (last - from + 1 < FEWEST || t[last]! - t[from - 1]! <= seconds)) from--;
  return (sums.y[last + 1]! - sums.y[from]!) / (last + 1 - from);
}

/** The same of those from `first` on; none at `end` or later. */
function meanAfter(t: Float64Array, sums: Sums, first: number, end: number, seconds: number): number {
  let last = first;
  while (last + 1 < end && (last - first + 1 < FEWEST || t[last + 1]! - t[first]! <= seconds)) last++;
  return (sums.y[last + 1]! - sums.y[first]!) / (last + 1 - first);
}

/** The mean of the readings about a gap, and by how much they are another behind it; 0 at an edge. */
function guess(
  t: Float64Array,
  sums: Sums,
  runs: readonly Run[],
  { before, after, from, to }: Gap,
): readonly [mean: number, moved: number] {
  const seconds = Math.min((to - from) / 2, SIDE);
  const own = (index: number) => runs.find(({ first, end }) => index >= first && index < end)!;
  const means: number[] = [];
  if (before >= 0) means.push(meanBefore(t, sums, own(before).first, before, seconds));
  if (after < t.length) means.push(meanAfter(t, sums, after, own(after).end, seconds));
  return [means.reduce((sum, mean) => sum + mean, 0) / means.length, means.length === 2 ? means[1]! - means[0]! : 0];
}

interface Trials {
  readonly meanSquare: number;
  /** Mean square of how far the level behind a stretch was from that before it. */
  readonly moved: number;
  /** Disjoint stretches. */
  readonly m: number;
}

/** Guesses across stretches of `length` that were logged. */
function tried(t: Float64Array, sums: Sums, runs: readonly Run[], length: number, side: 'before' | 'after' | 'both'): Trials {
  const seconds = Math.min(length / 2, SIDE);
  let [squares, moved, count, m] = [0, 0, 0, 0];
  for (const { first, end } of runs) {
    if (end - first < 2 * FEWEST) continue;
    const beside = Math.max(seconds, t[first + FEWEST - 1]! - t[first]!);
    m += Math.max(0, Math.floor((t[end - 1]! - t[first]! - beside) / (length + beside)));
    let [next, to] = [t[first]! + (side === 'after' ? 0 : beside), first];
    const last = t[end - 1]! - (side === 'before' ? 0 : beside);
    for (let from = first; from < end; from++) {
      if (t[from]! < next) continue;
      while (to < end - 1 && t[to]! < t[from]! + length) to++;
      if (t[to]! < t[from]! + length || t[to]! > last) break;
      const means: number[] = [];
      if (side !== 'after') means.push(meanBefore(t, sums, first, from, seconds));
      if (side !== 'before') means.push(meanAfter(t, sums, to, end, seconds));
      const error =
        means.reduce((sum, mean) => sum + mean, 0) / means.length - (sums.area[to]! - sums.area[from]!) / (t[to]! - t[from]!);
      squares += error ** 2;
      moved += (means[means.length - 1]! - means[0]!) ** 2;
      count++;
      next = t[from]! + EVERY * length;
    }
  }
  return count > 0 ? { meanSquare: squares / count, moved: moved / count, m } : { meanSquare: 0, moved: 0, m: 0 };
}

/** What gaps add to the uncertainty of a figure; nothing without any. `factor`: from the integral to the figure. */
export function gapParts({ context }: Soak, address: string, { u, dof, count }: Filled, factor: number): Part[] {
  if (count === 0) return [];
  const title = `what happened in gaps of the log, in ${address} of ${context.run}`;
  return [{ source: { id: `run:${context.run}/${address}/gaps`, title, dof }, share: factor * u }];
}

export function filledWords({ count, seconds }: Pick<Filled, 'count' | 'seconds'>): Of {
  return count === 0 ? {} : { gaps: `${counted(count, 'gap')}, ${duration(seconds)} filled from the readings about` };
}

/** Why a figure of a stretch is absent of which too much was not logged. */
export function notObserved({ longest, seconds }: Unfilled, what: string): Reason {
  const gap = longest < seconds ? `, ${duration(longest)} at one time` : '';
  return {
    absent: 'not-observed',
    why: `Of ${what} ${duration(seconds)} were not logged${gap}, and what was logged is too short to tell what may happen in such a time.`,
  };
}
