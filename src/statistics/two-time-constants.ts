import { exponentialRise } from './exponential-rise.ts';
import { fitCovariance } from './fit-covariance.ts';
import { riseStart } from './rise-start.ts';
import { stepObstacle } from './step-obstacle.ts';
import type { StepOptions } from './step-response.ts';

/** Step response y = asymptote − Σ amplitudes[k]·exp(−(t − start)/timeConstants[k]), the shorter time constant first. */
export interface TwoTimeConstants {
  /** Unit of y. */
  readonly asymptote: number;
  readonly amplitudes: readonly [number, number];
  /** Unit of t, ascending. */
  readonly timeConstants: readonly [number, number];
  readonly start: number;
  /** Over asymptote, both amplitudes, both time constants; autocorrelation of the residuals accounted for. */
  readonly covariance: readonly (readonly number[])[];
  readonly residualDeviation: number;
  readonly dof: number;
  readonly effectiveCount: number;
  readonly rows: number;
}

/**
 * Step response with two time constants, such as a chip on a board, or a device and its enclosure.
 *
 * When: where one time constant leaves too much. It is given whether or not the readings bear it: that is for the caller to judge.
 * @param t instants, never decreasing. Unit: any, usually s.
 * @param y as many readings. Unit: any.
 * @returns the fit, or why there is none, without a full stop
 * @throws RangeError for unequal lengths, or a start that is not finite
 * Source: JEDEC JESD51 family, for devices that answer a power step with a sum of exponentials (from memory); `exponentialRise`.
 * Cost: five to ten milliseconds for 3,600 rows.
 * @example
 * twoTimeConstants([0, 1], [20, 30]) // { failed: '2 readings are too few, 7 are needed' }
 */
export function twoTimeConstants(
  t: ArrayLike<number>,
  y: ArrayLike<number>,
  options: StepOptions = {},
): TwoTimeConstants | { readonly failed: string } {
  const obstacle = stepObstacle(t, y, options.start, 5);
  if (obstacle) return { failed: obstacle };
  const start = options.start ?? t[0]!;
  const s = Float64Array.from(t, (at) => at - start);
  const near = riseStart(s, y, 2);
  const rise = near && exponentialRise(s, y, near);
  if (!rise) return { failed: 'no two time constants can be told apart in the readings' };
  const order = rise.timeConstants[0]! <= rise.timeConstants[1]! ? [0, 1, 2, 3, 4] : [0, 2, 1, 4, 3];
  return {
    asymptote: rise.asymptote,
    amplitudes: [rise.amplitudes[order[1]! - 1]!, rise.amplitudes[order[2]! - 1]!],
    timeConstants: [rise.timeConstants[order[3]! - 3]!, rise.timeConstants[order[4]! - 3]!],
    start,
    ...fitCovariance(
      rise.residuals,
      order.map((i) => order.map((j) => rise.inverse[i]![j]!)),
    ),
    rows: t.length,
  };
}
