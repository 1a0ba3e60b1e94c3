import { betaFraction } from './beta-fraction.ts';
import { exp, log } from './elementary.ts';
import { logGammaHalf } from './log-gamma-half.ts';

/**
 * Probability that F, the ratio of two variances of equal populations, is larger than a value.
 *
 * When: to tell whether two spreads differ, before they are pooled.
 * @param ratio variance over variance, 0 or more; Infinity allowed
 * @param above degrees of freedom of the variance above the line, whole, 1 or more
 * @param below those of the one below it, whole, 1 or more
 * @returns the probability (unit 1)
 * @throws RangeError for arguments out of range
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.6.5 (the distribution) and 1.3.5.9 (the test); as an incomplete beta
 *   function, NIST Digital Library of Mathematical Functions, 8.17.22.
 * Cost: a continued fraction.
 * @example
 * fTail(1, 2, 2) // 0.5
 */
export function fTail(ratio: number, above: number, below: number): number {
  if (!(ratio >= 0)) throw new RangeError(`ratio is ${ratio}, expected 0 or more`);
  for (const dof of [above, below]) {
    if (!(Number.isInteger(dof) && dof >= 1))
      throw new RangeError(`degrees of freedom are ${dof}, expected a whole number from 1 on`);
  }
  if (ratio === Number.POSITIVE_INFINITY) return 0;
  const [a, b] = [below / 2, above / 2];
  const x = below / (below + above * ratio);
  if (x === 0 || x === 1) return x;
  const weight = exp(a * log(x) + b * log(1 - x) + logGammaHalf(above + below) - logGammaHalf(above) - logGammaHalf(below));
  return x < (a + 1) / (a + b + 2) ? (weight / a) * betaFraction(x, a, b) : 1 - (weight / b) * betaFraction(1 - x, b, a);
}
