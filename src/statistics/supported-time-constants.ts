import { type StepFit, type StepOptions, stepResponse } from './step-response.ts';
import { studentQuantile } from './student-quantile.ts';
import { type TwoTimeConstants, twoTimeConstants } from './two-time-constants.ts';

export interface SupportedTimeConstants {
  /** How many time constants the readings bear; 0 where no step response fits. */
  readonly count: 0 | 1 | 2;
  readonly one: StepFit | { readonly failed: string };
  readonly two: TwoTimeConstants | { readonly failed: string };
  /** QAICc of one time constant less that of two: above 4 speaks for two. NaN where one of them failed. */
  readonly gain: number;
}

/** Difference of QAICc from which the poorer model has "considerably less support". */
const CONSIDERABLE = 4;

/**
 * Whether the readings of a step response bear one time constant or two.
 *
 * Two are borne where each amplitude and time constant is longer than its own 95 % interval and the corrected quasi-likelihood
 * criterion QAICc prefers them by more than 4. QAICc = n ln(rss/n)/ĉ + 2K + 2K(K + 1)/(n/ĉ − K − 1), with K parameters
 * (the variance among them) and ĉ the rows for one independent residual of the richer model: without ĉ, autocorrelated readings would
 * always ask for more parameters.
 *
 * When: before a time constant or an asymptote is printed.
 * @param t instants, never decreasing. Unit: any, usually s.
 * @param y as many readings. Unit: any.
 * @throws RangeError for unequal lengths, or a start that is not finite
 * Source: Burnham & Anderson, Model Selection and Multimodel Inference, 2nd ed., 2002, 2.4 to 2.6 (from memory: section numbers).
 * Cost: that of `stepResponse` and `twoTimeConstants`.
 */
export function supportedTimeConstants(
  t: ArrayLike<number>,
  y: ArrayLike<number>,
  options: StepOptions = {},
): SupportedTimeConstants {
  const one = stepResponse(t, y, options);
  const two = twoTimeConstants(t, y, options);
  const gain = 'failed' in one || 'failed' in two ? Number.NaN : criterion(one, 4, two) - criterion(two, 6, two);
  if (!('failed' in two) && standsOut(two) && ('failed' in one || gain > CONSIDERABLE)) return { count: 2, one, two, gain };
  return { count: 'failed' in one ? 0 : 1, one, two, gain };
}

/** QAICc of a fit with K parameters, ĉ taken from the richer one. */
function criterion(fit: StepFit | TwoTimeConstants, parameters: number, richer: TwoTimeConstants): number {
  const count = richer.effectiveCount;
  const room = count - parameters - 1;
  if (!(room > 0)) return Number.POSITIVE_INFINITY;
  const meanSquare = (fit.residualDeviation ** 2 * (fit.rows - parameters + 1)) / fit.rows;
  return count * Math.log(meanSquare) + 2 * parameters + (2 * parameters * (parameters + 1)) / room;
}

function standsOut(fit: TwoTimeConstants): boolean {
  const factor = studentQuantile(0.975, fit.dof);
  const sizes = [...fit.amplitudes, ...fit.timeConstants];
  return sizes.every((size, k) => Math.abs(size) > factor * Math.sqrt(fit.covariance[k + 1]![k + 1]!));
}
