/**
 * Refuses a series that holds something other than finite numbers: a gap must be left out by whoever knows why it is there,
 * never averaged over in silence.
 *
 * @param what name of the series, for the message
 * @param values readings, any unit
 * @throws RangeError naming the first index that is not a finite number
 * Cost: one pass.
 * @example
 * requireFinite('values', [1, 2]) // undefined
 * requireFinite('values', [1, NaN]) // throws values[1] is NaN, expected a finite number
 */
export function requireFinite(what: string, values: ArrayLike<number>): void {
  for (let i = 0; i < values.length; i++) {
    if (!Number.isFinite(values[i])) throw new RangeError(`${what}[${i}] is ${values[i]}, expected a finite number`);
  }
}
