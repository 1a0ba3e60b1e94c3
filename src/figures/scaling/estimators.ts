/** What a fit over clock ratios says: the exponent of a power law, the share of time that no clock shortens. */
import { lineFit } from '../../statistics/line-fit.ts';
import { powerFit } from '../../statistics/power-fit.ts';
import type { Estimate } from './through-fit.ts';

/** Exponent p of y = c·xᵖ by least squares in y (NIST Statistical Reference Datasets, DanWood, for the model). */
export function exponentOf(x: readonly number[], y: readonly number[]): Estimate {
  const { exponent, uExponent, dof } = powerFit(x, y);
  return { value: exponent, u: dof > 0 ? uExponent : Number.NaN, dof };
}

/**
 * Share b/(a + b) of T = a/f + b at the reference, from clock ratios x and speedups y: times 1/y on a line over 1/x. The delta method
 * carries the covariance of the line's two parameters (JCGM 100:2008, eq. 13).
 */
export function independentShareOf(x: readonly number[], y: readonly number[]): Estimate {
  const line = lineFit(
    x.map((ratio) => 1 / ratio),
    y.map((speedup) => 1 / speedup),
  );
  const { intercept: b, slope: a, dof } = line;
  const whole = a + b;
  const [byB, byA] = [a / whole ** 2, -b / whole ** 2];
  const variance = (byB * line.uIntercept) ** 2 + (byA * line.uSlope) ** 2 + 2 * byA * byB * line.covariance;
  return { value: b / whole, u: dof > 0 ? Math.sqrt(Math.max(0, variance)) : Number.NaN, dof };
}
