/**
 * The continued fraction of I_x(a, b) · a · B(a, b) ÷ (xᵃ (1 − x)ᵇ), by Lentz's method.
 *
 * When: a tail of Student's t or of F, which are incomplete beta functions.
 * @param x from 0 to (a + 1)/(a + b + 2), where it converges fast
 * @param a above 0
 * @param b above 0
 * Source: NIST Digital Library of Mathematical Functions, 8.17.22.
 * Cost: about √(a + b) terms.
 * @example
 * betaFraction(0.5, 1, 1) // 2
 */
export function betaFraction(x: number, a: number, b: number): number {
  let numerator = 1;
  let denominator = 1 / (1 - ((a + b) * x) / (a + 1));
  let value = denominator;
  for (let m = 1; m < 100_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    denominator = 1 / (1 + even * denominator);
    numerator = 1 + even / numerator;
    value *= denominator * numerator;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    denominator = 1 / (1 + odd * denominator);
    numerator = 1 + odd / numerator;
    const change = denominator * numerator;
    value *= change;
    if (Math.abs(change - 1) < 1e-16) break;
  }
  return value;
}
