import { log } from './elementary.ts';

/**
 * ln Γ(n/2) for a whole n, by the recurrence from Γ(½) = √π or Γ(1) = 1.
 *
 * When: densities whose degrees of freedom are whole.
 * @param n whole, 1 or above
 * Source: NIST Digital Library of Mathematical Functions, 5.5.1 and 5.4.6.
 * Cost: n/2 logarithms.
 * @example
 * logGammaHalf(1) // 0.5723…
 * logGammaHalf(4) // 0
 */
export function logGammaHalf(n: number): number {
  let sum = n % 2 === 1 ? log(Math.PI) / 2 : 0;
  for (let twice = n - 2; twice > 0; twice -= 2) sum += log(twice / 2);
  return sum;
}
