import { exp } from './elementary.ts';

/** From here on the continued fraction needs fewer terms than the series. */
const FAR = 4;

/**
 * The area under the standard normal density between 0 and z ≥ 0, and the density at z.
 *
 * When: a probability of a normal quantity; see `studentTail` for one whose standard deviation is estimated.
 * @param z 0 or more (unit 1); Infinity allowed
 * @returns `between` from 0 to one half, good to about 1e-16 of itself; the density at z
 * @throws RangeError for z below 0 or not a number
 * Source: M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 26.2.11 (series) and 26.2.14 (continued fraction).
 * Cost: some forty terms.
 * @example
 * normalTail(1.96).between // 0.475002…
 */
export function normalTail(z: number): { readonly between: number; readonly density: number } {
  if (!(z >= 0)) throw new RangeError(`z is ${z}, expected 0 or more`);
  const density = exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  return { between: z < FAR ? density * series(z) : 0.5 - (density === 0 ? 0 : density / fraction(z)), density };
}

/** z + z³/3 + z⁵/(3·5) + … */
function series(z: number): number {
  let term = z;
  let sum = z;
  for (let n = 3; term > sum * 1e-17; n += 2) {
    term *= (z * z) / n;
    sum += term;
  }
  return sum;
}

/** z + 1/(z + 2/(z + 3/(z + …))), from the inside out. */
function fraction(z: number): number {
  let value = z;
  for (let n = 60; n >= 1; n--) value = z + n / value;
  return value;
}
