import { exp, log } from './elementary.ts';
import { normalQuantile } from './normal-quantile.ts';
import { studentTail } from './student-tail.ts';

/** Above this the expansion in 1/dof has an error below 1e-13 for every p from 1e-12 to 1 − 1e-12. */
const NEARLY_NORMAL = 1e4;

/**
 * Quantile of Student's t distribution.
 *
 * When: the coverage factor of an interval: p = 0.975 gives the half width of a 95 % interval in standard uncertainties.
 * @param p probability below the quantile, 0 … 1
 * @param dof degrees of freedom, above 0; fractions allowed, Infinity gives the normal quantile
 * @returns the quantile (unit 1); ∓Infinity at 0 and 1
 * @throws RangeError for arguments out of range
 * Source: inversion of `studentTail` by Newton's method on logarithms, where the areas are concave, so that it cannot miss;
 *   Abramowitz & Stegun, Handbook of Mathematical Functions, 26.7.5 for large dof.
 * Cost: about five continued fractions.
 * @example
 * studentQuantile(0.975, 10) // 2.228138…
 * studentQuantile(0.975, Infinity) // 1.959963…
 */
export function studentQuantile(p: number, dof: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`p is ${p}, expected 0 to 1`);
  if (!(dof > 0)) throw new RangeError(`dof is ${dof}, expected a number above 0`);
  const normal = normalQuantile(p);
  if (p === 0.5 || !Number.isFinite(normal) || dof === Number.POSITIVE_INFINITY) return normal;
  if (dof > NEARLY_NORMAL) return expansion(normal, dof);
  const size = p < 0.25 || p > 0.75 ? fromAbove(Math.min(p, 1 - p), dof) : fromBetween(Math.abs(p - 0.5), dof);
  return p < 0.5 ? -size : size;
}

/** Coefficients of z, z³, z⁵ … for each power of 1/dof. */
const EXPANSION: readonly (readonly [number, readonly number[]])[] = [
  [4, [1, 1]],
  [96, [3, 16, 5]],
  [384, [-15, 17, 19, 3]],
  [92160, [-945, -1920, 1482, 776, 79]],
];

function expansion(z: number, dof: number): number {
  let sum = z;
  let power = 1;
  for (const [divisor, coefficients] of EXPANSION) {
    power *= dof;
    sum += (z * coefficients.reduceRight((value, coefficient) => value * z * z + coefficient, 0)) / (divisor * power);
  }
  return sum;
}

function fromAbove(area: number, dof: number): number {
  const start = Math.max(1, -normalQuantile(area));
  return newton(start, (t) => {
    const { above, density } = studentTail(t, dof);
    return (above * log(above / area)) / (t * density);
  });
}

function fromBetween(area: number, dof: number): number {
  return newton(area * 2.6, (t) => {
    const { between, density } = studentTail(t, dof);
    return (-between * log(between / area)) / (t * density);
  });
}

/** Newton's method on log t: `step` is how far log t has to move. */
function newton(start: number, step: (t: number) => number): number {
  let t = start;
  for (let turn = 0; turn < 100; turn++) {
    const move = step(t);
    t *= exp(move);
    if (!(Math.abs(move) > 4e-16)) break;
  }
  return t;
}
