/** Moving means over a span of time. */

/**
 * Mean of the readings within ± `span`/2 of each; at the ends, of those that there are. A straight line passes unchanged
 * except in the last half span. O(n).
 * @param t seconds, never decreasing
 * @param y any unit; the result has the same
 */
export function movingMean(t: Float64Array, y: Float64Array, span: number): Float64Array {
  const smooth = new Float64Array(y.length);
  const origin = y[0] ?? 0;
  let first = 0;
  let next = 0;
  let sum = 0;
  for (let i = 0; i < y.length; i++) {
    while (next < y.length && t[next]! <= t[i]! + span / 2) sum += y[next++]! - origin;
    while (t[first]! < t[i]! - span / 2) sum -= y[first++]! - origin;
    smooth[i] = origin + sum / (next - first);
  }
  return smooth;
}

/** How long the smoothing is: a minute or five readings, but at most a third of the window that is judged. */
export function smoothingSpan(step: number, window: number): number {
  return Math.min(Math.max(60, 5 * step), window / 3);
}
