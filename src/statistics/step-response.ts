import { correlationTime } from './correlation-time.ts';
import { type ExponentialRise, exponentialRise } from './exponential-rise.ts';
import { riseStart } from './rise-start.ts';
import { stepObstacle } from './step-obstacle.ts';
import { studentQuantile } from './student-quantile.ts';

/** First-order step response y = asymptote − amplitude·exp(−(t − start)/timeConstant). */
export interface StepFit {
  /** Unit of y. */
  readonly asymptote: number;
  /** Asymptote less the value at `start`, unit of y: negative where the readings fall. */
  readonly amplitude: number;
  /** Unit of t. */
  readonly timeConstant: number;
  readonly start: number;
  /** Over asymptote, amplitude, timeConstant; autocorrelation of the residuals accounted for. */
  readonly covariance: readonly (readonly number[])[];
  /** Unit of y, of single rows. */
  readonly residualDeviation: number;
  /** Of the covariance, 1 or more. */
  readonly dof: number;
  /** Rows that would say as much if their residuals were independent. */
  readonly effectiveCount: number;
  readonly rows: number;
}

export interface StepOptions {
  /** Instant of the step, unit of t; the first row's when left out. */
  readonly start?: number;
}

/**
 * Asymptote, amplitude and time constant of a first-order step response, with a covariance that knows that readings of a slow
 * quantity repeat each other.
 *
 * The covariance of independent residuals is multiplied by the residuals' integrated autocorrelation time. A model that does not
 * describe the readings leaves slow residuals, and so tells its own uncertainty.
 *
 * When: temperatures after the load went on or off, at constant load and ambient. A long-tailed device has more than one time
 * constant: see `supportedTimeConstants`.
 * @param t instants, never decreasing. Unit: any, usually s.
 * @param y as many readings. Unit: any.
 * @returns the fit, or why there is none, as a sentence's end without a full stop: too few rows, no step beyond the scatter,
 *   or a time constant that the rows cannot tell (not longer than its own 95 % interval, or beyond twenty times their span)
 * @throws RangeError for unequal lengths, or a start that is not finite
 * Source: F. P. Incropera et al., Fundamentals of Heat and Mass Transfer, lumped capacitance (from memory), for the model;
 *   `exponentialRise` and `correlationTime` name theirs; regression with autocorrelated residuals: N. R. Draper & H. Smith,
 *   Applied Regression Analysis (from memory).
 * Cost: one to two milliseconds for 3,600 rows.
 */
export function stepResponse(
  t: ArrayLike<number>,
  y: ArrayLike<number>,
  options: StepOptions = {},
): StepFit | { readonly failed: string } {
  const obstacle = stepObstacle(t, y, options.start, 3);
  if (obstacle) return { failed: obstacle };
  const start = options.start ?? t[0]!;
  const s = Float64Array.from(t, (at) => at - start);
  const near = riseStart(s, y, 1);
  const rise = near && exponentialRise(s, y, near);
  return rise ? judged(described(rise, start, t.length), s[t.length - 1]! - s[0]!) : { failed: NO_TIME_CONSTANT };
}

const NO_TIME_CONSTANT = 'no single time constant fits the readings';

function described(rise: ExponentialRise, start: number, rows: number): StepFit {
  const { time, window } = correlationTime(rise.residuals);
  const variance = rise.rss / (rows - 3);
  return {
    asymptote: rise.asymptote,
    amplitude: rise.amplitudes[0]!,
    timeConstant: rise.timeConstants[0]!,
    start,
    covariance: rise.inverse.map((row) => row.map((value) => value * variance * time)),
    residualDeviation: Math.sqrt(variance),
    dof: Math.max(1, rows / window - 3),
    effectiveCount: rows / time,
    rows,
  };
}

/** The fit, or why it says nothing. */
function judged(fit: StepFit, span: number): StepFit | { readonly failed: string } {
  const factor = studentQuantile(0.975, fit.dof);
  if (Math.abs(fit.amplitude) <= factor * Math.sqrt(fit.covariance[1]![1]!))
    return { failed: 'no step stands out from the scatter' };
  if (fit.timeConstant > 20 * span) return { failed: 'the readings follow a straight line, so that they show no time constant' };
  if (fit.timeConstant <= factor * Math.sqrt(fit.covariance[2]![2]!))
    return { failed: 'the readings cannot tell the time constant' };
  return fit;
}
