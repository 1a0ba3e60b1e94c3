import { requirePairs } from './require-pairs.ts';

/** A straight line through the origin, y = slope·x. */
export interface OriginFit {
  /** Unit of y ÷ unit of x. */
  readonly slope: number;
  readonly uSlope: number;
  /** Unit of y. */
  readonly residualDeviation: number;
  readonly rss: number;
  /** About zero, not about the mean of y: 1 − rss ÷ Σy². NaN where all y are 0. */
  readonly rSquared: number;
  readonly dof: number;
}

/**
 * Straight line through the origin by least squares of y on x.
 *
 * When: y is known to vanish with x. With one pair the line is exact and its uncertainty NaN (unknown).
 * @param x finite numbers, not all zero. Unit: any.
 * @param y as many finite numbers. Unit: any.
 * @throws RangeError for no pair, unequal lengths, a number that is not finite, or x all zero
 * Source: NIST Statistical Reference Datasets, NoInt1, for the model and its uncentred R².
 * Cost: two passes.
 * @example
 * originFit([1, 2, 3], [2, 4, 6]).slope // 2
 */
export function originFit(x: ArrayLike<number>, y: ArrayLike<number>): OriginFit {
  requirePairs(x, y, 1);
  let [xx, xy, yy] = [0, 0, 0];
  for (let i = 0; i < x.length; i++) {
    xx += x[i]! * x[i]!;
    xy += x[i]! * y[i]!;
    yy += y[i]! * y[i]!;
  }
  if (xx === 0) throw new RangeError('all x are 0, expected at least one other');
  const slope = xy / xx;
  let rss = 0;
  for (let i = 0; i < x.length; i++) rss += (y[i]! - slope * x[i]!) ** 2;
  const dof = x.length - 1;
  const variance = dof > 0 ? rss / dof : Number.NaN;
  return {
    slope,
    uSlope: Math.sqrt(variance / xx),
    residualDeviation: Math.sqrt(variance),
    rss,
    rSquared: yy > 0 ? 1 - rss / yy : Number.NaN,
    dof,
  };
}
