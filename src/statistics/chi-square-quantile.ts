import { exp, log } from './elementary.ts';
import { logGammaHalf } from './log-gamma-half.ts';

/**
 * Quantile of the chi-square distribution for whole degrees of freedom.
 *
 * When: the interval of a standard deviation estimated from repeats: s·√(dof/quantile(0.975)) to s·√(dof/quantile(0.025)).
 * @param p probability below the quantile, above 0 and below 1
 * @param dof whole degrees of freedom, 1 to 10,000
 * @returns the quantile (unit 1)
 * @throws RangeError for arguments out of range
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.6.6 and 1.3.6.7.4; the area by its series and continued fraction,
 *   NIST Digital Library of Mathematical Functions, 8.11.4 and 8.9.2; inverted by halving the logarithm's range.
 * Cost: about 70 areas of some √dof terms each.
 * @example
 * chiSquareQuantile(0.95, 10) // 18.307038…
 */
export function chiSquareQuantile(p: number, dof: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`p is ${p}, expected above 0 and below 1`);
  if (!(Number.isInteger(dof) && dof >= 1 && dof <= 10_000))
    throw new RangeError(`dof is ${dof}, expected a whole number from 1 to 10,000`);
  let low = log(1e-300);
  let high = log(100 * dof + 1000);
  for (let turn = 0; turn < 200 && high - low > 1e-15 * Math.abs(low); turn++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (areaBelow(exp(middle), dof) < p) low = middle;
    else high = middle;
  }
  return exp((low + high) / 2);
}

/** Probability of a smaller chi-square: the regularised incomplete gamma function P(dof/2, x/2). */
function areaBelow(x: number, dof: number): number {
  const [a, z] = [dof / 2, x / 2];
  const density = exp(a * log(z) - z - logGammaHalf(dof));
  return z < a + 1 ? density * series(a, z) : 1 - density * continuedFraction(a, z);
}

function series(a: number, z: number): number {
  let term = 1 / a;
  let sum = term;
  for (let k = 1; k < 100_000 && term > sum * 1e-17; k++) {
    term *= z / (a + k);
    sum += term;
  }
  return sum;
}

/** By Lentz's method. */
function continuedFraction(a: number, z: number): number {
  let b = z + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let value = d;
  for (let k = 1; k < 100_000; k++) {
    const numerator = -k * (k - a);
    b += 2;
    d = 1 / (numerator * d + b);
    c = b + numerator / c;
    const change = c * d;
    value *= change;
    if (Math.abs(change - 1) < 1e-16) break;
  }
  return value;
}
