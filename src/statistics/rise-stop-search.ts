import { linearLeastSquares } from './linear-least-squares.ts';
import type { RiseData } from './rise-pair.ts';

/** A rise whose clock stops: y = asymptote − Σ amplitude·exp(−min(s, at)/timeConstant). */
export interface StopFit {
  readonly at: number;
  readonly asymptote: number;
  /** One or two, all above zero. */
  readonly amplitudes: readonly number[];
  readonly timeConstants: readonly number[];
  /** Its value from `at` on. */
  readonly level: number;
  readonly rss: number;
}

/** Time constants tried, log-spaced from two spacings of the readings to four spans. */
const TAUS = 24;
/** Stops are looked for between these shares of the span. */
const EARLIEST = 0.03;
const LATEST = 0.8;
const HALVINGS = 6;
/** Steps of one size at most. */
const TURNS = 4;
/** Two decays whose angle has a squared sine below this cannot be told apart in doubles. */
const PARALLEL = 1e-9;

/**
 * The stop, with one exponential or two, that leaves the least sum of squares: over a grid of time constants and all readings as the
 * moment of the stop, by running sums; then closer by halved steps.
 *
 * When: inside `riseStop`.
 * @returns null where no such curve rises
 * Source: common practice, no source.
 * Cost: some 300 pairs of time constants times the rows.
 * @example
 * stopSearch({ s: Float64Array.from({ length: 25 }, (_, k) => k), y: Float64Array.from({ length: 25 }, (_, k) => 10 * (1 - Math.exp(-Math.min(k, 8) / 10))), span: 24, shortest: 0.5 }).at.toFixed(1) // '8.0'
 */
export function stopSearch(data: RiseData): StopFit | null {
  const { s, y, span, shortest } = data;
  const taus = Array.from({ length: TAUS }, (_, k) => 4 * shortest * (span / shortest) ** (k / (TAUS - 1)));
  const parts = taus.map((timeConstant) => partOf(timeConstant, s, y));
  const total = running(y);
  const stops = [...s.keys()].filter((k) => k >= 3 && k < s.length - 2 && s[k]! >= EARLIEST * span && s[k]! <= LATEST * span);
  let [best, most] = [null as { at: number; timeConstants: number[] } | null, 0];
  for (let i = 0; i < TAUS; i++) {
    for (let j = i; j < TAUS; j++) {
      const drops = i === j ? dropOfOne(parts[i]!, total) : dropOfTwo(parts[i]!, parts[j]!, total);
      for (const stop of stops) {
        const drop = drops(stop);
        if (drop > most) [best, most] = [{ at: s[stop]!, timeConstants: i === j ? [taus[i]!] : [taus[i]!, taus[j]!] }, drop];
      }
    }
  }
  return best && closer(data, best.at, best.timeConstants);
}

/** A decay with the running sums of itself, its square, and its product with the readings. */
interface PartSums {
  readonly decay: Float64Array;
  readonly sum: Float64Array;
  readonly square: Float64Array;
  readonly right: Float64Array;
}

function partOf(timeConstant: number, s: Float64Array, y: Float64Array): PartSums {
  const decay = s.map((at) => Math.exp(-at / timeConstant));
  return { decay, sum: running(decay), square: running(decay, decay), right: running(decay, y) };
}

/** By how much one part makes the sum of squares smaller that stops at a reading; 0 where it does not rise. */
function dropOfOne(part: PartSums, total: Float64Array): (stop: number) => number {
  return (stop) => {
    const { along, square } = stoppedSums(part, total, stop);
    return along < 0 ? (along * along) / square : 0;
  };
}

/** The same for two parts together. */
function dropOfTwo(first: PartSums, second: PartSums, total: Float64Array): (stop: number) => number {
  const cross = running(first.decay, second.decay);
  const n = first.decay.length;
  return (stop) => {
    const [a, b] = [stoppedSums(first, total, stop), stoppedSums(second, total, stop)];
    const across = cross[stop + 1]! + (n - stop - 1) * first.decay[stop]! * second.decay[stop]! - (a.sum * b.sum) / n;
    const determinant = a.square * b.square - across * across;
    if (!(determinant > PARALLEL * a.square * b.square)) return 0;
    const [near, far] = [b.square * a.along - across * b.along, a.square * b.along - across * a.along];
    return near < 0 && far < 0 ? (near * a.along + far * b.along) / determinant : 0;
  };
}

/** Sums over all readings of a decay that stays as it is from reading `stop` on; those of squares and products centred. */
function stoppedSums({ decay, sum, square, right }: PartSums, total: Float64Array, stop: number) {
  const n = decay.length;
  const [rest, last] = [n - stop - 1, decay[stop]!];
  const all = sum[stop + 1]! + rest * last;
  const along = right[stop + 1]! + last * (total[n]! - total[stop + 1]!) - (all * total[n]!) / n;
  return { sum: all, square: square[stop + 1]! + rest * last * last - (all * all) / n, along };
}

/** Sums of the first k products, or of the first k values. */
function running(a: Float64Array, b?: Float64Array): Float64Array {
  const sums = new Float64Array(a.length + 1);
  for (let i = 0; i < a.length; i++) sums[i + 1] = sums[i]! + a[i]! * (b ? b[i]! : 1);
  return sums;
}

/** From the best of the grid downhill, each parameter to both sides in steps that are halved. */
function closer(data: RiseData, at: number, taus: readonly number[]): StopFit | null {
  let best = stopFit(data, at, taus);
  let [near, ratio] = [(2 * data.span) / data.y.length, 1.2];
  for (let halving = 0; best && halving < HALVINGS; halving++, near /= 2, ratio = Math.sqrt(ratio)) {
    for (let turn = 0; turn < TURNS; turn++) {
      const lower: StopFit = neighbours(data, best, near, ratio).reduce((least, fit) => (fit.rss < least.rss ? fit : least), best);
      if (lower === best) break;
      best = lower;
    }
  }
  return best;
}

function neighbours(data: RiseData, { at, timeConstants }: StopFit, near: number, ratio: number): StopFit[] {
  const scaled = (which: number, factor: number) => timeConstants.map((tau, k) => (k === which ? tau * factor : tau));
  return [
    stopFit(data, at - near, timeConstants),
    stopFit(data, at + near, timeConstants),
    ...timeConstants.flatMap((_, k) => [1 / ratio, ratio].map((factor) => stopFit(data, at, scaled(k, factor)))),
  ].filter((fit) => fit !== null);
}

/** The linear fit for a given stop and one or two given time constants; null where a part does not rise. */
function stopFit({ s, y, span }: RiseData, at: number, timeConstants: readonly number[]): StopFit | null {
  if (at < EARLIEST * span || at > LATEST * span) return null;
  const ones = new Float64Array(y.length).fill(1);
  const decays = timeConstants.map((tau) => s.map((time) => -Math.exp(-Math.min(time, at) / tau)));
  const linear = linearLeastSquares([ones, ...decays], y);
  if (!linear) return null;
  const [asymptote, ...amplitudes] = linear.parameters as [number, ...number[]];
  if (amplitudes.some((value) => value <= 0)) return null;
  const level = amplitudes.reduce((rest, value, k) => rest - value * Math.exp(-at / timeConstants[k]!), asymptote);
  return { at, asymptote, amplitudes, timeConstants, level, rss: linear.rss };
}
