/** The scatter of single readings, told from neighbours so that a course does not count as scatter. */
import { quantile } from '../statistics/quantile.ts';

export interface Scatter {
  /** Standard deviation of a single reading about the line through its two neighbours, in the unit of the readings. */
  readonly deviation: number;
  /** Largest change from one reading to the next. */
  readonly largest: number;
}

/**
 * Scatter by second differences, which a straight course leaves at zero (T. Gasser, L. Sroka and C. Jennen-Steinmetz,
 * Biometrika 73, 1986, 625–633; from memory), and the largest change between neighbours. Zeros with too few readings.
 * Rows are taken as evenly spaced. One pass.
 */
export function scatterOf(y: Float64Array): Scatter {
  let sum = 0;
  let largest = 0;
  for (let i = 1; i < y.length; i++) {
    const change = y[i]! - y[i - 1]!;
    if (Math.abs(change) > largest) largest = Math.abs(change);
    if (i > 1) sum += (change - (y[i - 1]! - y[i - 2]!)) ** 2;
  }
  return { deviation: y.length < 3 ? 0 : Math.sqrt(sum / (6 * (y.length - 2))), largest };
}

/** Median of |x| of a standard normal distribution. */
const MEDIAN_SIZE = 0.6744898;

/**
 * Scatter as in `scatterOf`, from the median size of second differences: a few jumps leave it as it is. Zero where more than half of the
 * readings are on a line with their neighbours, as those of a coarse sensor are: its step is for the caller to add.
 */
export function typicalScatter(y: Float64Array): number {
  if (y.length < 3) return 0;
  const seconds = new Float64Array(y.length - 2);
  for (let i = 0; i < seconds.length; i++) seconds[i] = Math.abs(y[i + 2]! - 2 * y[i + 1]! + y[i]!);
  const typical = seconds.every(Number.isFinite) ? quantile(seconds, 0.5) : 0;
  return typical / (MEDIAN_SIZE * Math.sqrt(6));
}

/**
 * Noise of a single reading where a load may change too: the smaller of both scatters, so that a few jumps leave it as it is. Of a coarse
 * sensor that mostly repeats a reading it is what its readings scatter by, up to half a step. `step` in the unit of y.
 */
export function readingNoise(y: Float64Array, step: number): number {
  return Math.min(scatterOf(y).deviation, Math.max(typicalScatter(y), step / 2));
}
