import { fitCovariance } from './fit-covariance.ts';
import { requirePairs } from './require-pairs.ts';

/** Slope of a stretch of a log, with what slow noise leaves of it. */
export interface Trend {
  /** Unit of y over that of t. */
  readonly slope: number;
  /** Standard uncertainty of the slope; NaN for fewer than four readings. */
  readonly u: number;
  /** Value of the line at the last instant, unit of y. */
  readonly end: number;
}

/** Residuals are summed into this many blocks at the most, one count after the other: few blocks see slow noise under loud white noise. */
const COUNTS = [1000, 100, 32];

/**
 * Least-squares line through an autocorrelated series, with the uncertainty of its slope: the largest that any of three block counts
 * gives, so that a small slow part under white noise is not missed.
 *
 * When: to tell a trend from noise. The bend of a course counts as slow noise.
 * @param t instants, never decreasing. Unit: any.
 * @param y as many readings. Unit: any.
 * @throws RangeError for unequal lengths, or fewer than two pairs
 * Source: `fitCovariance`; several block sizes: H. Flyvbjerg and H. G. Petersen, Journal of Chemical Physics 91, 1989, 461–466 (from
 *   memory), simplified to three.
 * Cost: a few passes.
 * @example
 * trend([0, 1, 2, 3], [1, 3, 5, 7]) // { slope: 2, u: 0, end: 7 }
 */
export function trend(t: ArrayLike<number>, y: ArrayLike<number>): Trend {
  requirePairs(t, y, 2);
  const n = t.length;
  const [meanT, meanY] = [meanOf(t), meanOf(y)];
  let [stt, sty] = [0, 0];
  for (let i = 0; i < n; i++) {
    stt += (t[i]! - meanT) ** 2;
    sty += (t[i]! - meanT) * (y[i]! - meanY);
  }
  const slope = stt > 0 ? sty / stt : 0;
  const residuals = Float64Array.from(y, (value, i) => value - meanY - slope * (t[i]! - meanT));
  const end = meanY + slope * (t[n - 1]! - meanT);
  if (n < 4 || !(stt > 0)) return { slope, u: Number.NaN, end };
  const spreads = COUNTS.filter((count, k) => k === 0 || count < n).map((count) => {
    const means = blockMeans(residuals, Math.min(count, n));
    const inverse = [
      [1 / means.length, 0],
      [0, n / means.length / stt],
    ];
    return fitCovariance(means, inverse).covariance[1]![1]!;
  });
  return { slope, u: Math.sqrt(Math.max(...spreads)), end };
}

function meanOf(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum / values.length;
}

/** Means of that many neighbouring stretches of nearly equal length. */
function blockMeans(values: Float64Array, count: number): Float64Array {
  const sums = new Float64Array(count);
  const sizes = new Float64Array(count);
  for (let i = 0; i < values.length; i++) {
    const block = Math.floor((i * count) / values.length);
    sums[block]! += values[i]!;
    sizes[block]!++;
  }
  return sums.map((sum, block) => sum / sizes[block]!);
}
