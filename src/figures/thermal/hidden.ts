/** By how much a sensor's step and noise may hide or feign a change that a criterion of steady state judges. */
import { firstRowAt } from '../phases.ts';
import { scatterOf } from '../scatter.ts';
import { movingMean } from '../smooth.ts';
import type { Rule } from './criteria.ts';
import type { Sampled } from './load-series.ts';

/** What the smoothed readings of a load may be off by. */
export interface Hidden {
  /** Largest error that the sensor's step leaves in a smoothed reading, K. */
  readonly step: number;
  /** Standard deviation of the smoothed readings about their slow course, K. */
  readonly noise: number;
  /** Seconds that the smoothing reaches over. */
  readonly span: number;
}

/** By how much the judged change may have come out too small or too large, at 95 %. Unit: that of the change. */
export interface Excess {
  readonly less: number;
  readonly more: number;
  /** How much of `more` noise alone accounts for. */
  readonly noise: number;
}

/** `step`: that in which the sensor reads, K. */
export function hiddenIn(series: Sampled, span: number, step: number): Hidden {
  return { step: stepError(quietest(series.readings.y), step), noise: noiseOfSmoothed(series, span), span };
}

/** The load is looked at in this many pieces: readings may dither on one plateau and not on the next. */
const PIECES = 8;

/** Scatter of single readings where it is least, K. */
function quietest(y: Float64Array): number {
  const size = Math.floor(y.length / PIECES);
  if (size < 3) return scatterOf(y).deviation;
  return Math.min(...Array.from({ length: PIECES }, (_, k) => scatterOf(y.subarray(k * size, (k + 1) * size)).deviation));
}

/** From this scatter on, in steps, readings dither by themselves, and their mean is finer than the step. */
const DITHERS = 0.35;

/**
 * Largest error that a sensor's step leaves in a mean of readings that scatter so much, in their unit.
 *
 * A quiet sensor hides anything within half a step (JCGM 100:2008, F.2.2.1, by its limits); noise smooths the steps out, and what is left
 * falls with its square (first term of the Fourier series of the mean error of a quantiser under normal noise; B. Widrow, I. Kollár and
 * M.-C. Liu, IEEE Transactions on Instrumentation and Measurement 45, 1996, 353–361; from memory).
 */
export function stepError(scatter: number, step: number): number {
  if (!(step > 0)) return 0;
  if (scatter < DITHERS * step) return step / 2;
  const variance = Math.max(0, scatter ** 2 - step ** 2 / 12);
  return (step / Math.PI) * Math.exp((-2 * Math.PI ** 2 * variance) / step ** 2);
}

/** The slow course is a moving mean over this many times the smoothing. */
const COURSE = 8;

/**
 * Standard deviation of the smoothed readings about their slow course in the second half of the load, K, corrected for what the course
 * takes; no less than independent readings with the scatter of neighbours would leave.
 */
function noiseOfSmoothed({ t, readings, lasted, step }: Sampled, span: number): number {
  const from = firstRowAt(t, lasted / 2);
  const [late, y] = [t.subarray(from), readings.y.subarray(from)];
  const smooth = movingMean(late, y, span);
  const course = movingMean(late, smooth, COURSE * span);
  let squares = 0;
  for (let i = 0; i < smooth.length; i++) squares += (smooth[i]! - course[i]!) ** 2;
  const about = Math.sqrt(squares / Math.max(1, smooth.length) / (1 - 1 / COURSE));
  return Math.max(about, scatterOf(y).deviation / Math.sqrt(Math.max(1, span / (step || span || 1))));
}

/**
 * A spread of several noisy values is mostly too large: that of a flat course reads as the range of so many normal values, that of a
 * steep one scatters as the difference of its ends. The smaller multiples were chosen by the coverage table. `end` is the standard
 * uncertainty of the fitted end value, K.
 */
export function excessOf(rule: Rule, { step, noise, span }: Hidden, end: number): Excess {
  const sized = (steps: number, less: number, more: number): Excess => ({
    less: steps * step + less * noise,
    more: steps * step + more * noise,
    noise: more * noise,
  });
  switch (rule.kind) {
    case 'change':
      return sized(2, 2, rangeFactor(rule.window / (span || rule.window)));
    case 'readings':
      return sized(2, 2 * Math.SQRT2, 4.5 * Math.SQRT2);
    case 'slope': {
      const { less, more, noise: alone } = sized(3, 3 * slopeFactor(rule.window, span), 3 * slopeFactor(rule.window, span));
      return { less: less / rule.window, more: more / rule.window, noise: alone / rule.window };
    }
    case 'within': {
      const { less, more, noise: alone } = sized(2, 2, 3);
      return { less: less + 2 * end, more: more + 2 * end, noise: alone };
    }
  }
}

/** Standard deviation of a slope times its window, for smoothed readings of unit noise. */
function slopeFactor(window: number, span: number): number {
  return Math.sqrt(12 / Math.max(2, window / (span || window)));
}

/**
 * Which range n standard normal values stay within 19 times of 20: a line in ln n through the tabled points for 10 and 100 (upper 5 %
 * points of the range: E. S. Pearson and H. O. Hartley, Biometrika Tables for Statisticians 1; from memory).
 */
function rangeFactor(n: number): number {
  return 2.86 + 0.7 * Math.log(Math.max(2, n));
}
