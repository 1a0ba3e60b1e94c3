import { betaFraction } from './beta-fraction.ts';
import { exp, log1p } from './elementary.ts';

/**
 * The two areas under Student's t density that a value t ≥ 0 cuts: `between` 0 and t, and `above` t. They sum to one half; each is
 * accurate by itself, also where the other swallows it.
 *
 * When: a probability for a difference (twice `above` is the two-sided p), or a quantile by inversion.
 * @param t 0 or more (unit 1)
 * @param dof degrees of freedom, above 0, finite, fractions allowed
 * @returns both areas, and the density at t
 * @throws RangeError for arguments out of range
 * Source: NIST Digital Library of Mathematical Functions, 8.17.22 (continued fraction of the incomplete beta function), 5.11.13
 *   (ratio of gamma functions).
 * Cost: a continued fraction, about √dof terms at most.
 * @example
 * studentTail(1, 1).density // 0.159154… (1 ÷ 2π)
 */
export function studentTail(
  t: number,
  dof: number,
): { readonly between: number; readonly above: number; readonly density: number } {
  if (!(t >= 0)) throw new RangeError(`t is ${t}, expected 0 or more`);
  if (!(dof > 0 && Number.isFinite(dof))) throw new RangeError(`dof is ${dof}, expected a finite number above 0`);
  const square = t * t;
  const density = (gammaRatio(dof / 2) / Math.sqrt(dof * Math.PI)) * exp((-(dof + 1) / 2) * log1p(square / dof));
  const x = dof / (dof + square);
  const outer = x < (dof / 2 + 1) / (dof / 2 + 2.5);
  if (outer) {
    const above = t === Number.POSITIVE_INFINITY ? 0 : (density * t * betaFraction(x, dof / 2, 0.5)) / dof;
    return { between: 0.5 - above, above, density };
  }
  const between = density * t * betaFraction(square / (dof + square), 0.5, dof / 2);
  return { between, above: 0.5 - between, density };
}

/** Γ(a + ½) ÷ Γ(a): by the asymptotic series for large a, brought there by the recurrence of Γ. */
function gammaRatio(a: number): number {
  let factor = 1;
  let b = a;
  for (; b < 40; b++) factor *= b / (b + 0.5);
  const r = 1 / b;
  const series =
    1 +
    r *
      (-1 / 8 +
        r * (1 / 128 + r * (5 / 1024 + r * (-21 / 32768 + r * (-399 / 262144 + r * (869 / 4194304 + (r * 39325) / 33554432))))));
  return factor * Math.sqrt(b) * series;
}
