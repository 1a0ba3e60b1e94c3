import { correlationTime } from './correlation-time.ts';
import { requireFinite } from './require-finite.ts';
import { studentQuantile } from './student-quantile.ts';
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

/** What values follow besides their mean: shapes of one number a reading, each up to a factor, and how many parameters it took to find them. */
export interface SeriesCourse {
  readonly shapes: readonly ArrayLike<number>[];
  readonly parameters: number;
}

/** The correction for what was taken out of the residuals stops here: past it the series is too short for its own memory. */
const SMALLEST_CORRECTION = 0.2;
/** Fewer degrees of freedom than this make intervals wider without making them truer (see the coverage tests). */
const FEWEST_DOF = 2;
/** All readings, at most this many blocks of them; and blocks so long that a slow part of the noise is seen above a quick one. */
const ALL = 1000;
const LONGER_BLOCKS = [100, 32];

/**
 * Mean of an autocorrelated series, evenly sampled or not, with an honest standard uncertainty.
 *
 * Readings of a slow quantity repeat each other, so s/√n is far too small. Here the autocovariances of the weighted residuals
 * are summed over the window of `correlationWindow`; the sum is corrected for what the mean (and the course) took out of the residuals;
 * and the degrees of freedom are those of a sum over that window. All of that three times, on at most 1000, 100 and 32 blocks: a small slow
 * part drowns in quick noise on many blocks and shows on few. The count whose 95 % interval is widest is taken. So u and
 * `studentQuantile` together cover as they say: 92 % to 98 % for 3 to 3600 readings, white or autoregressive with a correlation time
 * of up to a tenth of the series (see the coverage tests). Noise slower than that is not in u: no series that short can tell it.
 * Anticorrelation is not used to claim a smaller u than independent readings have. Without a course, a drift is taken for slow noise, so
 * u is then about a quarter of the drift. A constant series has u = 0: what its steps hide is for the caller to add.
 *
 * When: any mean over a stretch of a log. For independent repeats use `mean` and `sampleDeviation`.
 * @param values finite readings in order of time. Unit: any; mean and u have the same.
 * @param weights share of each reading, not negative, with a sum above zero; the time that it stands for, when sampling is uneven. Default: all equal.
 * @param course what the values follow besides: fitted by least squares and taken out of the residuals. It leaves the mean as it is, so a
 *   wrong course can only widen u; one of many parameters would take slow noise with it. Default: none. Used from eight readings on.
 * @throws RangeError for a value or weight that is not finite, a negative weight, weights that sum to zero, or unequal lengths
 * Source: `correlationWindow` and `correlationTime` name theirs; several block sizes: H. Flyvbjerg and H. G. Petersen, The Journal of
 *   Chemical Physics 91, 1989, 461–466 (abstract read), where the plateau is sought; taking the widest is ours. U. Wolff, Computer Physics
 *   Communications 156, 2004, 143–153 (correction (2W + 1)/n for the mean, and relative variance 2(2W + 1)/n of u², whence dof n/(2W + 1) by
 *   JCGM 100:2008, G.4.2, eq. G.3, less what the mean takes); L. Kish, Survey Sampling, 1965 (effective number of unequal weights).
 * Cost: a few passes, and at most about 400,000 products.
 * @example
 * seriesMean([4, 4, 4]) // { mean: 4, u: 0, dof: 2, n: 3, effectiveCount: 3 }
 * seriesMean([1, 2, 3, 2]).u // 0.408248… (√(2 ÷ 12))
 */
export function seriesMean(values: ArrayLike<number>, weights?: ArrayLike<number>, course?: SeriesCourse): SeriesMean {
  requireFinite('values', values);
  const n = values.length;
  const { mean, total } = weightedMean(values, weights);
  const shares = sharesOf(n, weights, total);
  const independent = 1 / sumOfSquares(shares);
  if (n < 2 || !(independent > 1 + 1e-12)) return { mean, u: Number.NaN, dof: 0, n, effectiveCount: Math.min(n, 1) };
  const residuals = Float64Array.from(shares, (_, i) => values[i]! - mean);
  const follows = course && n >= FEWEST_FOR_COURSE;
  const taken = follows ? takenOut(residuals, shares, course.shapes) : 0;
  const parameters = 1 + (taken > 0 ? course!.parameters : 0);
  const squares = residuals.reduce((sum, residual, i) => sum + shares[i]! * residual * residual, 0);
  if (squares <= (Number.EPSILON * mean) ** 2) return { mean, u: 0, dof: n - 1, n, effectiveCount: n };
  const { u, dof } = widest(residuals, shares, parameters);
  const variance = squares / (1 - 1 / independent);
  return { mean, u, dof, n, effectiveCount: Math.min(n, Math.max(1, variance / (u * u))) };
}

const FEWEST_FOR_COURSE = 8;

function sharesOf(n: number, weights: ArrayLike<number> | undefined, total: number): Float64Array {
  return Float64Array.from({ length: n }, (_, i) => (weights ? weights[i]! : 1) / total);
}

/** Takes out of the residuals what follows the shapes, by least squares (each made orthogonal to those before it); how many there were to take. */
function takenOut(residuals: Float64Array, shares: Float64Array, shapes: readonly ArrayLike<number>[]): number {
  const taken: Float64Array[] = [];
  for (const shape of shapes) {
    if (shape.length !== residuals.length) throw new RangeError(`found a course of ${shape.length} for ${residuals.length} values`);
    const { mean } = weightedMean(shape, shares);
    const centred = Float64Array.from(residuals, (_, i) => shape[i]! - mean);
    const before = product(centred, centred, shares);
    for (const other of taken) takeOut(centred, other, shares);
    if (!(product(centred, centred, shares) > SAME * before)) continue;
    takeOut(residuals, centred, shares);
    taken.push(centred);
  }
  return taken.length;
}

/** What is left of a shape beside others, as a share of its square, below which it says nothing of its own. */
const SAME = 1e-12;

function takeOut(values: Float64Array, shape: Float64Array, shares: Float64Array): void {
  const factor = product(values, shape, shares) / product(shape, shape, shares);
  if (!Number.isFinite(factor)) return;
  for (let i = 0; i < values.length; i++) values[i]! -= factor * shape[i]!;
}

function product(a: Float64Array, b: Float64Array, shares: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += shares[i]! * a[i]! * b[i]!;
  return sum;
}

interface Estimate {
  readonly u: number;
  readonly dof: number;
}

function widest(residuals: Float64Array, shares: Float64Array, parameters: number): Estimate {
  const n = residuals.length;
  const size = Math.ceil(n / ALL);
  const all = { count: Math.ceil(n / size), block: (i: number) => Math.floor(i / size) };
  const longer = LONGER_BLOCKS.filter((count) => count < n).map((count) => ({ count, block: byShare(shares, count) }));
  const estimates = [all, ...longer].map(({ count, block }) => estimate(residuals, shares, count, block, parameters));
  const half = ({ u, dof }: Estimate) => u * studentQuantile(0.975, dof);
  return estimates.reduce((best, each) => (half(each) > half(best) ? each : best));
}

/** Blocks that stand for equal times: the one in which the middle of a reading's share lies. */
function byShare(shares: Float64Array, count: number): (i: number) => number {
  const blocks = new Uint16Array(shares.length);
  let before = 0;
  for (let i = 0; i < shares.length; i++) {
    blocks[i] = Math.min(count - 1, Math.floor((before + shares[i]! / 2) * count));
    before += shares[i]!;
  }
  return (i) => blocks[i]!;
}

/** u of the mean from sums over blocks. */
function estimate(
  residuals: Float64Array,
  shares: Float64Array,
  count: number,
  block: (i: number) => number,
  parameters: number,
): Estimate {
  const sums = new Float64Array(count);
  const weights = new Float64Array(count);
  let independent = 0;
  for (let i = 0; i < residuals.length; i++) {
    const k = block(i);
    sums[k]! += shares[i]! * residuals[i]!;
    weights[k]! += shares[i]!;
    independent += (shares[i]! * residuals[i]!) ** 2;
  }
  const { time, window } = correlationTime(sums);
  const known = 1 / sumOfSquares(weights) / window;
  const corrected = (squares: number, count: number) => squares / Math.max(SMALLEST_CORRECTION, 1 - parameters / count);
  const square = Math.max(corrected(time * sumOfSquares(sums), known), corrected(independent, 1 / sumOfSquares(shares)));
  const dof = Math.max(Math.min(FEWEST_DOF, residuals.length - 1), known - (parameters * time) / window);
  return { u: Math.sqrt(square), dof };
}

function sumOfSquares(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return sum;
}
