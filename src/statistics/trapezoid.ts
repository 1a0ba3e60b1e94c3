import { requirePairs } from './require-pairs.ts';

/**
 * Integral of a sampled series by the trapezoidal rule, steps of any length.
 *
 * When: energy from power readings. It draws a straight line over every gap, so split the series at gaps first.
 * @param t instants, never decreasing. Unit: any, usually s.
 * @param y readings at those instants. Unit: any; the integral has that of y times that of t (W and s give J).
 * @returns the integral; 0 for no reading or one
 * @throws RangeError for unequal lengths, a number that is not finite, or an instant before the one ahead of it
 * Source: Burden & Faires, Numerical Analysis, composite trapezoidal rule (from memory).
 * Cost: one pass.
 * @example
 * trapezoid([0, 1, 3], [0, 2, 4]) // 7
 */
export function trapezoid(t: ArrayLike<number>, y: ArrayLike<number>): number {
  requirePairs(t, y, 0);
  let area = 0;
  for (let i = 1; i < t.length; i++) {
    const step = t[i]! - t[i - 1]!;
    if (step < 0)
      throw new RangeError(`t[${i}] is ${t[i]}, before t[${i - 1}] = ${t[i - 1]}; expected instants that never decrease`);
    area += step * (y[i]! + y[i - 1]!);
  }
  return area / 2;
}
