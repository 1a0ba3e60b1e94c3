import { log } from './elementary.ts';

/**
 * Quantile of the standard normal distribution.
 *
 * When: an interval whose uncertainty has infinitely many degrees of freedom.
 * @param p probability below the quantile, 0 … 1
 * @returns the quantile (unit 1); −Infinity at 0, Infinity at 1
 * @throws RangeError for p out of range
 * Source: M. J. Wichura, Algorithm AS 241 (PPND16), Applied Statistics 37, 1988, 477–484; about 1e-16 relative.
 * Cost: two polynomials.
 * @example
 * normalQuantile(0.975) // 1.9599639845400…
 */
export function normalQuantile(p: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`p is ${p}, expected 0 to 1`);
  if (p === 0 || p === 1) return p === 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * ratio(0.180625 - q * q, CENTRE);
  const r = Math.sqrt(-log(q < 0 ? p : 1 - p));
  const size = r <= 5 ? ratio(r - 1.6, SIDE) : ratio(r - 5, TAIL);
  return q < 0 ? -size : size;
}

type Rational = readonly [readonly number[], readonly number[]];

/** Coefficients from the constant term up, as printed in AS 241, rounded to doubles. */
const CENTRE: Rational = [
  [
    3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987, 67265.7709270087,
    33430.57558358813, 2509.0809287301227,
  ],
  [
    1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271, 28729.085735721943,
    5226.495278852546,
  ],
];
const SIDE: Rational = [
  [
    1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684, 0.2417807251774506,
    0.022723844989269184, 0.0007745450142783414,
  ],
  [
    1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457, 0.0005475938084995345,
    1.0507500716444169e-9,
  ],
];
const TAIL: Rational = [
  [
    6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124, 0.0012426609473880784,
    2.7115555687434876e-5, 2.0103343992922881e-7,
  ],
  [
    1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133, 1.8463183175100548e-5,
    1.421511758316446e-7, 2.0442631033899397e-15,
  ],
];

function ratio(x: number, [above, below]: Rational): number {
  const horner = (coefficients: readonly number[]) => coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);
  return horner(above) / horner(below);
}
