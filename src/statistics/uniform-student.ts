import { log1p } from './elementary.ts';
import { normalTail } from './normal-tail.ts';
import { studentQuantile } from './student-quantile.ts';
import { studentTail } from './student-tail.ts';

/** A uniform part narrower than this share of the rest changes no digit that counts, and would cost digits by cancellation. */
const NARROW = 1e-4;
/** Above this Student's distribution is taken as normal; its 95 % quantile differs by less than 1e-6 of itself. */
const NEARLY_NORMAL = 1e6;

/**
 * Half width h of the interval that holds a sum X + s·T about 0 with probability p: X uniform between −a and a, T Student's t, both
 * independent. Exactly p·a where s is 0, and s times Student's quantile where a is 0.
 *
 * When: an error known only to lie within limits stands beside scatter. Limits by themselves have a 95 % interval of 0.95 a, or 1.65
 * standard uncertainties (JCGM 100:2008, 4.3.7 and G.1.3), not of 1.96.
 * @param p probability, above 0 and below 1
 * @param a half width of the uniform part, 0 or more, any unit
 * @param s scale of the t distributed part (its standard uncertainty), 0 or more, same unit
 * @param dof degrees of freedom of T, above 0; Infinity for a normal one
 * @returns h in the same unit
 * @throws RangeError for arguments out of range
 * Source: propagation of distributions, JCGM 101:2008, 5.2 and 5.6 (5.6.2: analytically), with 6.4.2 (limits) and 6.4.9 (estimates from few readings); the
 *   convolution in closed form by parts: ∫T = z·T + (ν + z²)/(ν − 1)·t.
 * Cost: about six steps of Newton's method.
 * @example
 * uniformStudentHalfWidth(0.95, 1, 0, 5) // 0.95
 * uniformStudentHalfWidth(0.95, 0, 1, 10) // 2.228138…
 */
export function uniformStudentHalfWidth(p: number, a: number, s: number, dof: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`p is ${p}, expected above 0 and below 1`);
  if (!(a >= 0 && s >= 0 && Number.isFinite(a + s))) throw new RangeError(`widths ${a} and ${s}, expected 0 or more and finite`);
  if (s === 0) return p * a;
  if (a <= NARROW * s) return Math.sqrt(s * s + (a * a) / 3) * studentQuantile((1 + p) / 2, dof);
  const area = dof > NEARLY_NORMAL ? normalArea : (z: number) => studentArea(z, dof);
  // The interval is no wider than both together, and no narrower than that of the uniform part alone.
  let [low, high] = [p * a, a + s * studentQuantile((1 + p) / 2, dof)];
  let h = Math.min(high, Math.sqrt(low * low + (high - a) * (high - a)));
  for (let turn = 0; turn < 200; turn++) {
    const [outer, inner] = [area((h + a) / s), area(Math.abs(h - a) / s)];
    const missing = p - (s / (2 * a)) * (outer.integral - inner.integral);
    if (missing > 0) low = h;
    else high = h;
    const slope = (outer.between - Math.sign(h - a) * inner.between) / a;
    const next = h + missing / slope;
    const bounded = next > low && next < high ? next : (low + high) / 2;
    if (Math.abs(bounded - h) <= 1e-13 * h) return bounded;
    h = bounded;
  }
  return h;
}

interface Area {
  /** Probability between 0 and z. */
  readonly between: number;
  /** An antiderivative of twice that, the same for z and −z. */
  readonly integral: number;
}

function normalArea(z: number): Area {
  const { between, density } = normalTail(z);
  return { between, integral: 2 * (z * between + density) };
}

function studentArea(z: number, dof: number): Area {
  const { between, density } = studentTail(z, dof);
  // At one degree of freedom the last term has a pole; its limit there, less a constant, is a logarithm.
  const rest = Math.abs(dof - 1) < 1e-6 ? -log1p(z * z) / (2 * Math.PI) : ((dof + z * z) / (dof - 1)) * density;
  return { between, integral: 2 * (z * between + rest) };
}
