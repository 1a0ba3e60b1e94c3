import { correlationTime } from './correlation-time.ts';

/** The correction for what the fit took out of its own residuals stops here: past it the series is too short for its own memory. */
const SMALLEST_CORRECTION = 0.2;
/** Fewer degrees of freedom than this make intervals wider without making them truer (see the coverage tests). */
const FEWEST_DOF = 2;

/**
 * What the residuals of a fit say about its parameters when neighbouring residuals repeat each other: the covariance of independent
 * residuals, times their integrated autocorrelation time, corrected for the share of slow scatter that the parameters themselves took up.
 *
 * When: a fit with slowly varying regressors over rows in order of time.
 * @param residuals in order of time. Unit: that of y.
 * @param inverse (XᵀX)⁻¹ over the parameters
 * @returns the covariance (units of the parameters' products); degrees of freedom, 2 or more; effective count of rows; and the standard
 *   deviation of single residuals (unit of y)
 * Source: as `correlationTime`; the same correction for one parameter, a mean: U. Wolff, Computer Physics Communications 156, 2004,
 *   143–153; for several parameters by analogy, proved by the coverage tests.
 * Cost: that of `correlationTime`.
 * @example
 * fitCovariance(Float64Array.of(1, -1, 1, -1), [[0.25]]).residualDeviation // 1.154700… (√(4 ÷ 3))
 */
export function fitCovariance(residuals: Float64Array, inverse: readonly (readonly number[])[]) {
  const rows = residuals.length;
  const parameters = inverse.length;
  let rss = 0;
  for (let i = 0; i < rows; i++) rss += residuals[i]! * residuals[i]!;
  const { time, window } = correlationTime(residuals);
  const known = rows / window;
  const variance = ((rss / rows) * time) / Math.max(SMALLEST_CORRECTION, 1 - parameters / known);
  return {
    covariance: inverse.map((row) => row.map((value) => value * variance)),
    residualDeviation: Math.sqrt(rss / (rows - parameters)),
    dof: Math.max(FEWEST_DOF, known - (parameters * time) / window),
    effectiveCount: rows / time,
  };
}
