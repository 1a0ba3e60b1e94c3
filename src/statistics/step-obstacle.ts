/** Rows needed beyond one for each parameter. */
const SPARE = 2;

/**
 * What keeps a step response from being fitted at all, before any arithmetic.
 *
 * When: first thing in `riseProfile`.
 * @param t instants, any unit
 * @param y readings, any unit
 * @param start instant of the step, or undefined
 * @param parameters how many the model has
 * @returns the reason without a full stop, or null
 * @throws RangeError for unequal lengths, or a start that is not finite
 * Cost: one pass.
 * @example
 * stepObstacle([0, 1, 2, 3], [20, 30, 35, 37], undefined, 3) // '4 readings are too few, 5 are needed'
 */
export function stepObstacle(
  t: ArrayLike<number>,
  y: ArrayLike<number>,
  start: number | undefined,
  parameters: number,
): string | null {
  const n = t.length;
  if (y.length !== n) throw new RangeError(`t has ${n} values and y has ${y.length}, expected as many of both`);
  if (start !== undefined && !Number.isFinite(start)) throw new RangeError(`start is ${start}, expected a finite number`);
  if (n < parameters + SPARE) return `${n} readings are too few, ${parameters + SPARE} are needed`;
  let same = true;
  for (let i = 0; i < n; i++) {
    if (!Number.isFinite(t[i]) || !Number.isFinite(y[i])) return `reading ${i + 1} is not a finite number`;
    if (i > 0 && t[i]! < t[i - 1]!) return `the time of reading ${i + 1} is before that of the one ahead of it`;
    if (y[i] !== y[0]) same = false;
  }
  if (same) return 'all readings are the same, so that there is no step';
  if (t[n - 1] === t[0]) return 'all readings are of the same instant';
  return null;
}
