/** A window of this many correlation times misses less than one percent of an exponentially falling autocorrelation (Sokal's c = 5). */
const ENOUGH = 2.5;

/**
 * Sum of autocovariances over the lags that matter: up to the last before the autocorrelation first falls to zero or below, or to two and
 * a half times the correlation time found so far, whichever comes first. Beyond, estimates are mostly noise, and their sum does not converge.
 *
 * When: inside `correlationTime`.
 * @param centred deviations from their mean, in order. Unit: any.
 * @returns the last lag summed, in elements (0 for an alternating or constant series; about a third of the length for a drift), and
 *   Σ zᵢ·zᵢ₊ₖ over all i and |k| ≤ lag (unit squared)
 * Source: first transit through zero: Zięba & Ramza, Metrology and Measurement Systems 18(4), 2011, 529–542; self-consistent
 *   window: A. Sokal, "Monte Carlo methods in statistical mechanics", in Functional Integration, 1997, section 3 (from memory: section).
 * Cost: n × (lag + 2) products.
 * @example
 * correlationWindow([2, 1, 0, -1, -2]) // { lag: 1, sum: 18 }
 */
export function correlationWindow(centred: ArrayLike<number>): { readonly lag: number; readonly sum: number } {
  const squares = products(centred, 0);
  let sum = squares;
  let lag = 0;
  while (lag + 1 < centred.length && lag * squares < ENOUGH * sum) {
    const next = products(centred, lag + 1);
    if (!(next > 0)) break;
    sum += 2 * next;
    lag++;
  }
  return { lag, sum };
}

function products(z: ArrayLike<number>, lag: number): number {
  let sum = 0;
  for (let i = lag; i < z.length; i++) sum += z[i]! * z[i - lag]!;
  return sum;
}
