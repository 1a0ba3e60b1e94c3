import { correlationTime } from './correlation-time.ts';
import { leastOfRises } from './least-of-rises.ts';
import { linearLeastSquares } from './linear-least-squares.ts';
import type { RiseData } from './rise-pair.ts';

/** A rise that bent, and settled otherwise than it began. */
export interface RiseBend {
  /** When, unit of t since the start. */
  readonly at: number;
  /** The value there, unit of y. */
  readonly level: number;
  /** Slope just after it over the slope just before it: below zero where it fell from then on. */
  readonly slopes: number;
  /** Likelihood ratio against the best rise that goes on: −2 ln of it, on the effective number of rows. */
  readonly ratio: number;
}

/** Above what any rise that went on reached in simulations: linear, leaking, convecting, of up to three exponentials, boosted, read by a sensor that lags. */
const STANDS_OUT = 40;
/** Slow noise that is worth fewer independent readings than this makes bends by itself. */
const FEWEST_EFFECTIVE = 12;
/** What a step of the readings leaves at least, as a standard deviation in steps. */
const STEP_SHARE = 0.25;
/** It must climb slower after the bend, by this factor at least: a sum of exponentials has no such corner. */
const MOST_SLOPES = 0.75;
/** Time constants tried, log-spaced from two spacings of the readings to two spans. */
const TAUS = 20;
/** Bends are looked for between these shares of the span. */
const EARLIEST = 0.02;
const LATEST = 0.8;

/**
 * Whether a rise bent: is it told better by one exponential that goes over into another, a − A·exp(−min(s, c)/τ₁) + D·(1 − exp(−max(0, s − c)/τ₂)),
 * than by any rise of one or two exponentials? So does a fan that steps in and stays on; so does a load that falls a little.
 *
 * When: before a step response is fitted to a load whose cooling nobody logged.
 * @param t instants, never decreasing, evenly spaced or nearly so (means in equal spans of time). Unit: any.
 * @param y as many readings, finite. Unit: any.
 * @param start instant of the step, unit of t
 * @param step of the readings, unit of y; 0 where it is not known
 * @returns null where it did not bend, or nothing shows it
 * Source: likelihood ratio of a broken curve with a nuisance parameter: D. V. Hinkley, Journal of the American Statistical Association 66,
 *   1971, 736–743 (from memory); its threshold by simulation.
 * Cost: some 10 ms for 120 rows; 30 ms more where a corner shows.
 * @example
 * riseBend(Float64Array.from({ length: 60 }, (_, k) => k), Float64Array.from({ length: 60 }, (_, k) => (k < 12 ? 10 * (1 - Math.exp(-k / 10)) : 6.99 - (1 - Math.exp((12 - k) / 6)))), 0, 0.1).at // 12
 * riseBend([0, 1], [20, 30], 0, 0.1) // null
 */
export function riseBend(t: ArrayLike<number>, y: ArrayLike<number>, start: number, step: number): RiseBend | null {
  const n = t.length;
  if (n < 16) return null;
  const s = Float64Array.from(t, (at) => at - start);
  const span = s[n - 1]! - s[0]!;
  const data: RiseData = { s, y: Float64Array.from(y), span, shortest: (0.5 * span) / (n - 1) };
  const corner = cornerOf(data);
  const bend = corner && closer(data, corner);
  if (!bend || !(bend.slopes <= MOST_SLOPES)) return null;
  const effectiveCount = n / correlationTime(bend.residuals).time;
  const floor = n * (STEP_SHARE * step) ** 2 || Number.MIN_VALUE;
  const ratio = effectiveCount * Math.log(Math.max(leastOfRises(data), floor) / Math.max(bend.rss, floor));
  return ratio > STANDS_OUT && effectiveCount > FEWEST_EFFECTIVE
    ? { at: bend.at, level: bend.level, slopes: bend.slopes, ratio }
    : null;
}

/** A corner at a reading, and the time constants before and after it. */
interface Corner {
  readonly row: number;
  readonly before: number;
  readonly after: number;
}

/** Σ of a shape, of its square, and of its product with centred readings. */
interface Sums {
  readonly sum: number;
  readonly square: number;
  readonly along: number;
}

/** The corner that leaves the least sum of squares, over a grid of time constants and all readings. */
function cornerOf({ s, y, span, shortest }: RiseData): Corner | null {
  const n = y.length;
  const mean = y.reduce((sum, value) => sum + value, 0) / n;
  const centred = y.map((value) => value - mean);
  const taus = Array.from({ length: TAUS }, (_, k) => 4 * shortest * (span / (2 * shortest)) ** (k / (TAUS - 1)));
  let [best, most] = [null as Corner | null, 0];
  for (let row = 3; row < n - 5; row++) {
    if (s[row]! < EARLIEST * span || s[row]! > LATEST * span) continue;
    const rises = taus.map((tau) => sumsOf(centred, (i) => -Math.exp(-Math.min(s[i]!, s[row]!) / tau), 0));
    const ends = taus.map((tau) => sumsOf(centred, (i) => -Math.expm1((s[row]! - s[i]!) / tau), row));
    taus.forEach((before, i) => {
      const last = -Math.exp(-s[row]! / before);
      taus.forEach((after, j) => {
        const drop = dropOf(rises[i]!, ends[j]!, last * ends[j]!.sum, n);
        if (drop > most) [best, most] = [{ row, before, after }, drop];
      });
    });
  }
  return best;
}

/** Sums over the readings from `from` on; the shape is 0 before. */
function sumsOf(centred: Float64Array, shape: (i: number) => number, from: number): Sums {
  let [sum, square, along] = [0, 0, 0];
  for (let i = from; i < centred.length; i++) {
    const value = shape(i);
    sum += value;
    square += value * value;
    along += value * centred[i]!;
  }
  return { sum, square, along };
}

/** By how much both shapes together make the sum of squares about the mean smaller; 0 where the first does not rise. `cross`: Σ of their product. */
function dropOf(a: Sums, b: Sums, cross: number, n: number): number {
  const [aa, bb, ab] = [a.square - a.sum ** 2 / n, b.square - b.sum ** 2 / n, cross - (a.sum * b.sum) / n];
  const determinant = aa * bb - ab * ab;
  if (!(determinant > 1e-9 * aa * bb)) return 0;
  const first = bb * a.along - ab * b.along;
  return first > 0 ? (first * a.along + (aa * b.along - ab * a.along) * b.along) / determinant : 0;
}

/** From the best of the grid downhill, each parameter to both sides in steps that are halved. */
function closer(data: RiseData, corner: Corner) {
  let [at, best] = [corner, bendFit(data, corner)];
  for (let ratio = FIRST_RATIO; best && ratio > LAST_RATIO; ratio = Math.sqrt(ratio)) {
    for (let moved = true; moved; ) {
      moved = false;
      for (const next of beside(at, ratio)) {
        const fit = bendFit(data, next);
        if (fit && fit.rss < best.rss * LESS) [at, best, moved] = [next, fit, true];
      }
    }
  }
  return best;
}

/** Time constants are first moved by this factor, and last by this. */
const FIRST_RATIO = 1.3;
const LAST_RATIO = 1.01;
/** A move must make the sum of squares smaller by this factor at least, so that it ends. */
const LESS = 1 - 1e-6;

function beside({ row, before, after }: Corner, ratio: number): Corner[] {
  return [
    { row, before: before * ratio, after },
    { row, before: before / ratio, after },
    { row, before, after: after * ratio },
    { row, before, after: after / ratio },
    { row: row + 1, before, after },
    { row: row - 1, before, after },
  ];
}

/** The linear fit for a corner; null where there is none, or it does not rise. */
function bendFit({ s, y }: RiseData, { row, before, after }: Corner) {
  if (row < 3 || row > y.length - 5) return null;
  const at = s[row]!;
  const rise = s.map((time) => -Math.exp(-Math.min(time, at) / before));
  const end = s.map((time) => -Math.expm1(-Math.max(0, time - at) / after));
  const linear = linearLeastSquares([new Float64Array(y.length).fill(1), rise, end], y);
  if (!linear) return null;
  const [asymptote, amplitude, change] = linear.parameters as [number, number, number];
  if (!(amplitude > 0)) return null;
  const residuals = y.map((value, i) => value - asymptote - amplitude * rise[i]! - change * end[i]!);
  const slope = (amplitude / before) * Math.exp(-at / before);
  return { at, level: asymptote + amplitude * rise[row]!, slopes: change / after / slope, residuals, rss: linear.rss };
}
