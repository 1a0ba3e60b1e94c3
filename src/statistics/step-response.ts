import { exponentialRise } from './exponential-rise.ts';
import { fitCovariance } from './fit-covariance.ts';
import { mean } from './mean.ts';
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
  /** Of the covariance, 2 or more. */
  readonly dof: number;
  /** Rows that would say as much if their residuals were independent. */
  readonly effectiveCount: number;
  readonly rows: number;
}

export interface StepOptions {
  /** Instant of the step, unit of t; the first row's when left out. */
  readonly start?: number;
}

/** A time constant beyond this many times the span is a straight line. */
const MOST_SPANS = 20;
/** Half width of a 95 % interval, as a share of the parameter, past which the model is no longer straight across the interval. */
const WIDEST = 0.5;
/** Likelihood ratio that a constant reaches by chance once in a thousand: χ² with two degrees of freedom, −2 ln 0.001. */
const FLAT = -2 * Math.log(0.001);

/**
 * Asymptote, amplitude and time constant of a first-order step response, with a covariance that knows that readings of a slow
 * quantity repeat each other.
 *
 * `fitCovariance` multiplies the covariance of independent residuals by their integrated autocorrelation time. A model that does not
 * describe the readings leaves slow residuals, and so tells its own uncertainty. The sensor's own steps and offset are for the caller to add.
 *
 * When: temperatures after the load went on or off, at constant load and ambient. A long-tailed device has more than one time
 * constant: see `twoTimeConstants`.
 * @param t instants, never decreasing. Unit: any, usually s.
 * @param y as many readings. Unit: any.
 * @returns the fit, or why there is none, a sentence without its full stop: too few rows, a reading that is not a number, no change
 *   beyond the scatter, or too little of the step (a 95 % interval wider than the time constant or amplitude itself)
 * @throws RangeError for unequal lengths, or a start that is not finite
 * Source: F. P. Incropera et al., Fundamentals of Heat and Mass Transfer, lumped capacitance (from memory), for the model;
 *   `exponentialRise` and `fitCovariance` name theirs.
 * Cost: one to two milliseconds for 3,600 rows.
 * @example
 * stepResponse([0, 1], [20, 30]) // { failed: '2 readings are too few, 5 are needed' }
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
  if (!rise) return { failed: 'no single time constant fits the readings' };
  const [amplitude, timeConstant] = [rise.amplitudes[0]!, rise.timeConstants[0]!];
  const spread = fitCovariance(rise.residuals, rise.inverse);
  return judged(
    { asymptote: rise.asymptote, amplitude, timeConstant, start, ...spread, rows: t.length },
    y,
    s[s.length - 1]! - s[0]!,
  );
}

/** The fit, or why it says nothing. */
function judged(fit: StepFit, y: ArrayLike<number>, span: number): StepFit | { readonly failed: string } {
  const meanSquare = (fit.residualDeviation ** 2 * (fit.rows - 3)) / fit.rows;
  if (fit.effectiveCount * Math.log(meanSquareAboutMean(y) / meanSquare) <= FLAT) {
    return { failed: 'no step stands out from the scatter' };
  }
  const factor = studentQuantile(0.975, fit.dof);
  const told =
    fit.timeConstant <= MOST_SPANS * span &&
    fit.timeConstant * WIDEST > factor * Math.sqrt(fit.covariance[2]![2]!) &&
    Math.abs(fit.amplitude) * WIDEST > factor * Math.sqrt(fit.covariance[1]![1]!);
  return told ? fit : { failed: 'the readings show too little of the step to tell its time constant' };
}

function meanSquareAboutMean(y: ArrayLike<number>): number {
  const centre = mean(y);
  let squares = 0;
  for (let i = 0; i < y.length; i++) squares += (y[i]! - centre) ** 2;
  return squares / y.length;
}
