import { centredSums } from './centred-sums.ts';
import { requirePairs } from './require-pairs.ts';

/** A straight line y = intercept + slope·x with what the scatter about it says of both. */
export interface LineFit {
  /** Unit of y. */
  readonly intercept: number;
  /** Unit of y ÷ unit of x. */
  readonly slope: number;
  readonly uIntercept: number;
  readonly uSlope: number;
  /** Of intercept and slope. */
  readonly covariance: number;
  /** Of intercept and slope, −1 … 1. */
  readonly correlation: number;
  /** Unit of y. */
  readonly residualDeviation: number;
  /** Residual sum of squares. */
  readonly rss: number;
  /** About the mean of y; NaN where y is constant. */
  readonly rSquared: number;
  readonly dof: number;
}

/**
 * Straight line by least squares of y on x, from centred sums: epoch milliseconds on the x axis keep all digits.
 *
 * When: y scatters evenly, x is known far better, neighbouring residuals are independent. With two pairs the line is exact and its
 * uncertainties are NaN (unknown).
 * @param x finite numbers, not all equal. Unit: any.
 * @param y as many finite numbers. Unit: any.
 * @throws RangeError for fewer than two pairs, unequal lengths, a number that is not finite, or x all equal
 * Source: JCGM 100:2008, H.3.2, eq. H.13; R² as in the NIST Statistical Reference Datasets (Norris).
 * Cost: five passes.
 * @example
 * lineFit([1, 2, 3], [3, 5, 7]).slope // 2
 * lineFit([1, 2, 3], [3, 5, 7]).intercept // 1
 */
export function lineFit(x: ArrayLike<number>, y: ArrayLike<number>): LineFit {
  requirePairs(x, y, 2);
  const n = x.length;
  const { meanX, meanY, sxx, sxy, syy } = centredSums(x, y);
  if (!(sxx > 0)) throw new RangeError(`all ${n} x are ${x[0]}, expected at least two different ones`);
  const slope = sxy / sxx;
  const { rss, left } = residuals(x, y, meanX, meanY, slope);
  const dof = n - 2;
  const variance = dof > 0 ? rss / dof : Number.NaN;
  const uSlope = Math.sqrt(variance / sxx);
  const meanSquareX = sxx / n + meanX * meanX;
  return {
    intercept: meanY - slope * meanX + left,
    slope,
    uIntercept: uSlope * Math.sqrt(meanSquareX),
    uSlope,
    covariance: (-meanX * variance) / sxx,
    correlation: -meanX / Math.sqrt(meanSquareX),
    residualDeviation: Math.sqrt(variance),
    rss,
    rSquared: syy > 0 ? 1 - rss / syy : Number.NaN,
    dof,
  };
}

/** Residual sum of squares, and the mean residual that rounding left. */
function residuals(x: ArrayLike<number>, y: ArrayLike<number>, meanX: number, meanY: number, slope: number) {
  let squares = 0;
  let left = 0;
  for (let i = 0; i < x.length; i++) {
    const r = y[i]! - meanY - slope * (x[i]! - meanX);
    squares += r * r;
    left += r;
  }
  return { rss: squares, left: left / x.length };
}
