import { correlationTime } from './correlation-time.ts';
import { requireFinite } from './require-finite.ts';
import { weightedMean } from './weighted-mean.ts';

/** Mean of a stretch of a log, with what its readings can say about it. */
export interface SeriesMean {
  /** Weighted mean, in the unit of the values; NaN when there are none. */
  readonly mean: number;
  /** Standard uncertainty of the mean from the scatter of the readings alone, same unit; NaN for fewer than two readings (unknown). */
  readonly u: number;
  /** Degrees of freedom of u; 2 at least for three readings or more; 0 where u is unknown. */
  readonly dof: number;
  readonly n: number;
  /** Number of independent readings that would give the same u: from 1 to n. */
  readonly effectiveCount: number;
}

/** The correction for the mean's own uncertainty stops here: past it the series is too short for its own memory. */
const SMALLEST_CORRECTION = 0.2;
/** Fewer degrees of freedom than this make intervals wider without making them truer (see the coverage tests). */
const FEWEST_DOF = 2;

/**
 * Mean of an autocorrelated series, evenly sampled or not, with an honest standard uncertainty.
 *
 * Readings of a slow quantity repeat each other, so s/√n is far too small. Here the autocovariances of the weighted deviations
 * are summed over the window of `correlationWindow`; the sum is corrected for having been taken about the estimated mean; and the
 * degrees of freedom are those of a sum over that window, so that u and `studentQuantile` together cover as they say
 * (0.90 to 0.99 for 95 % on autoregressive series worth five or more independent readings, see the tests).
 * A series of more than 1000 readings is first summed into at most 1000 blocks. Anticorrelation is not used to claim
 * a smaller u than independent readings have. A drift is taken for slow noise, so u is then about a quarter of the drift.
 * A constant series has u = 0: what its steps hide (resolution ÷ √12) is for the caller to add.
 *
 * When: any mean over a stretch of a log. For independent repeats use `mean` and `sampleDeviation`.
 * @param values finite readings in order of time. Unit: any; mean and u have the same.
 * @param weights share of each reading, not negative, with a sum above zero; the time that it stands for, when sampling is uneven. Default: all equal.
 * @throws RangeError for a value or weight that is not finite, a negative weight, weights that sum to zero, or unequal lengths
 * Source: `correlationWindow` and `correlationTime` name theirs; U. Wolff, Computer Physics Communications 156, 2004, 143–153
 *   (correction (2W + 1)/n for the mean, and relative variance 2(2W + 1)/n of u², whence dof n/(2W + 1) by JCGM 100:2008, G.4.2,
 *   eq. G.3, less what the mean takes); L. Kish, Survey Sampling, 1965 (effective number of unequal weights).
 * Cost: a few passes, and at most about 400,000 products.
 * @example
 * seriesMean([4, 4, 4]) // { mean: 4, u: 0, dof: 2, n: 3, effectiveCount: 3 }
 * seriesMean([1, 2, 3, 2]).u // 0.408248… (√(2 ÷ 12))
 */
export function seriesMean(values: ArrayLike<number>, weights?: ArrayLike<number>): SeriesMean {
  requireFinite('values', values);
  const n = values.length;
  const { mean, total } = weightedMean(values, weights);
  const { deviations, squares, shares } = weighted(values, weights, mean, total);
  const independent = 1 / shares;
  if (n < 2 || !(independent > 1 + 1e-12)) return { mean, u: Number.NaN, dof: 0, n, effectiveCount: Math.min(n, 1) };
  if (squares <= (Number.EPSILON * mean) ** 2) return { mean, u: 0, dof: n - 1, n, effectiveCount: n };
  const { time, window } = correlationTime(deviations);
  const known = independent / window;
  const square = (time * sumOfSquares(deviations)) / Math.max(SMALLEST_CORRECTION, 1 - 1 / known);
  const variance = squares / (1 - shares);
  const effectiveCount = Math.min(n, Math.max(1, variance / square));
  return { mean, u: Math.sqrt(square), dof: Math.max(Math.min(FEWEST_DOF, n - 1), known - time / window), n, effectiveCount };
}

/** Each deviation times its share of the total weight; the weighted mean square; and the sum of the squared shares (1/n for equal weights). */
function weighted(values: ArrayLike<number>, weights: ArrayLike<number> | undefined, mean: number, total: number) {
  const deviations = new Float64Array(values.length);
  let squares = 0;
  let shares = 0;
  for (let i = 0; i < values.length; i++) {
    const share = (weights ? weights[i]! : 1) / total;
    const d = values[i]! - mean;
    deviations[i] = share * d;
    squares += share * d * d;
    shares += share * share;
  }
  return { deviations, squares, shares };
}

function sumOfSquares(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return sum;
}
