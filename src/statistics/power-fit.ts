import { exp, log } from './elementary.ts';
import { leastSquares } from './least-squares.ts';
import { lineFit } from './line-fit.ts';
import { requirePairs } from './require-pairs.ts';

/** A power law y = coefficient·x^exponent. */
export interface PowerFit {
  /** Unit of y ÷ that of x to the exponent. */
  readonly coefficient: number;
  /** Unit 1. */
  readonly exponent: number;
  readonly uCoefficient: number;
  readonly uExponent: number;
  /** Over coefficient, exponent. */
  readonly covariance: readonly (readonly number[])[];
  readonly residualDeviation: number;
  readonly rss: number;
  readonly dof: number;
  readonly converged: boolean;
}

/**
 * Power law by least squares in y itself. A line through the logarithms is another estimate: it weighs small y more, and is biased
 * where y scatters evenly.
 *
 * When: how a score grows with the clock, with the scatter of y about even. With two pairs the fit is exact and its uncertainties NaN.
 * @param x finite numbers above zero, not all equal. Unit: any.
 * @param y as many finite numbers, above zero. Unit: any.
 * @throws RangeError for fewer than two pairs, unequal lengths, or a number that is not finite and above zero
 * Source: NIST Statistical Reference Datasets, DanWood, for the model; `leastSquares` for the method.
 * Cost: that of `leastSquares`, about 100 steps.
 * @example
 * Math.round(powerFit([1, 2, 4], [3, 6, 12]).coefficient) // 3
 */
export function powerFit(x: ArrayLike<number>, y: ArrayLike<number>): PowerFit {
  requirePairs(x, y, 2);
  requireAboveZero('x', x);
  requireAboveZero('y', y);
  const logX = Float64Array.from(x, (value) => log(value));
  const line = lineFit(
    logX,
    Float64Array.from(y, (value) => log(value)),
  );
  const centre = logX.reduce((sum, value) => sum + value, 0) / logX.length;
  const middle = exp(line.intercept + line.slope * centre);
  const centred = logX.map((value) => value - centre);
  const fit = leastSquares({
    model: (at, [height, exponent]) => height! * exp(exponent! * at),
    jacobian: (at, [height, exponent]) => [exp(exponent! * at), height! * at * exp(exponent! * at)],
    start: [middle, line.slope],
    x: centred,
    y,
  });
  return atOrigin(fit, centre);
}

/** From the height at the middle x to the coefficient at x = 1: coefficient = height·e^(−exponent·centre). */
function atOrigin(fit: ReturnType<typeof leastSquares>, centre: number): PowerFit {
  const [height, exponent] = fit.parameters as [number, number];
  const factor = exp(-exponent * centre);
  const coefficient = height * factor;
  const [[hh, he], [, ee]] = fit.covariance as [[number, number], [number, number]];
  const variance = factor * factor * hh - 2 * factor * coefficient * centre * he + (coefficient * centre) ** 2 * ee;
  const covariance = factor * he - coefficient * centre * ee;
  const { residualDeviation, rss, dof, converged } = fit;
  return {
    coefficient,
    exponent,
    uCoefficient: Math.sqrt(variance),
    uExponent: Math.sqrt(ee),
    covariance: [
      [variance, covariance],
      [covariance, ee],
    ],
    residualDeviation,
    rss,
    dof,
    converged,
  };
}

function requireAboveZero(what: string, values: ArrayLike<number>): void {
  for (let i = 0; i < values.length; i++) {
    if (!(values[i]! > 0)) throw new RangeError(`${what}[${i}] is ${values[i]}, expected a number above zero`);
  }
}
