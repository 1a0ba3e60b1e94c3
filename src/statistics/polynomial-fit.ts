import { linearLeastSquares } from './linear-least-squares.ts';
import { mean } from './mean.ts';
import { requirePairs } from './require-pairs.ts';

/** A polynomial y = c₀ + c₁x + c₂x² + …, with what the scatter about it says of its coefficients. */
export interface PolynomialFit {
  /** From the constant up. Unit of coefficient k: that of y ÷ that of x to the k. */
  readonly coefficients: readonly number[];
  /** Standard uncertainties, one a coefficient. */
  readonly u: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  readonly residualDeviation: number;
  readonly rss: number;
  /** About the mean of y; NaN where y is constant. */
  readonly rSquared: number;
  readonly dof: number;
}

/**
 * Polynomial of a given degree by least squares of y on x.
 *
 * When: a smooth curve through few readings, such as a calibration; not to extrapolate. For degree 1 `lineFit` keeps more digits
 * where x has a large offset.
 * @param x finite numbers, with more different ones than the degree. Unit: any.
 * @param y as many finite numbers. Unit: any.
 * @param degree whole number, 0 or more
 * @throws RangeError for too few pairs or different x, unequal lengths, a number that is not finite, or a degree out of range
 * Source: NIST Statistical Reference Datasets, Pontius, for the model and its R².
 * Cost: 2 n × (degree + 1)² products.
 * @example
 * polynomialFit([0, 1, 2, 3], [1, 2, 5, 10], 2).coefficients.map((c) => Math.round(c)) // [1, 0, 1]
 */
export function polynomialFit(x: ArrayLike<number>, y: ArrayLike<number>, degree: number): PolynomialFit {
  if (!(Number.isInteger(degree) && degree >= 0)) throw new RangeError(`degree is ${degree}, expected a whole number, 0 or more`);
  requirePairs(x, y, degree + 1);
  const scale = Array.from(x).reduce((most, value) => Math.max(most, Math.abs(value)), 0) || 1;
  const columns = Array.from({ length: degree + 1 }, (_, k) => Float64Array.from(x, (value) => (value / scale) ** k));
  const solution = linearLeastSquares(columns, y);
  if (!solution) throw new RangeError(`degree ${degree} needs ${degree + 1} different x, found fewer (or too close together)`);
  const dof = x.length - columns.length;
  const { rss } = solution;
  const variance = dof > 0 ? rss / dof : Number.NaN;
  const covariance = solution.inverse.map((row, i) => row.map((value, j) => (variance * value) / scale ** (i + j)));
  return {
    coefficients: solution.parameters.map((value, k) => value / scale ** k),
    u: covariance.map((row, k) => Math.sqrt(row[k]!)),
    covariance,
    residualDeviation: Math.sqrt(variance),
    rss,
    rSquared: 1 - rss / squaresAboutMean(y),
    dof,
  };
}

function squaresAboutMean(y: ArrayLike<number>): number {
  const centre = mean(y);
  let squares = 0;
  for (let i = 0; i < y.length; i++) squares += (y[i]! - centre) ** 2;
  return squares > 0 ? squares : Number.NaN;
}
