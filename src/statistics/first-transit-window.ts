/**
 * Longest lag before the autocorrelation first falls to zero or below: how far a series reaches into its own future.
 * Beyond it an estimated autocorrelation is mostly noise, and summing it would not converge.
 *
 * When: to sum autocorrelations. A series that alternates has 0; one that drifts has about a third of its length.
 * @param centred deviations from their mean, in order. Unit: any.
 * @returns the lag in rows, 0 for an uncorrelated or constant series, and the sum Σ over i and |k| ≤ lag of zᵢ·zᵢ₊ₖ (unit squared)
 * Source: "first transit through zero" of Zięba & Ramza, Metrology and Measurement Systems 18(4), 2011, 529–542.
 * Cost: n × (lag + 2) products.
 */
export function firstTransitWindow(centred: ArrayLike<number>): { readonly lag: number; readonly sum: number } {
  let sum = products(centred, 0);
  for (let lag = 1; lag < centred.length; lag++) {
    const next = products(centred, lag);
    if (!(next > 0)) return { lag: lag - 1, sum };
    sum += 2 * next;
  }
  return { lag: Math.max(0, centred.length - 1), sum };
}

function products(z: ArrayLike<number>, lag: number): number {
  let sum = 0;
  for (let i = lag; i < z.length; i++) sum += z[i]! * z[i - lag]!;
  return sum;
}
