/** The scatter of single readings, told from neighbours so that a course does not count as scatter. */

export interface Scatter {
  /** Standard deviation of a single reading about the line through its two neighbours, in the unit of the readings. */
  readonly deviation: number;
  /** Largest change from one reading to the next. */
  readonly largest: number;
}

/**
 * Scatter by second differences, which a straight course leaves at zero (T. Gasser, L. Sroka and C. Jennen-Steinmetz,
 * Biometrika 73, 1986, 625–633; from memory), and the largest change between neighbours. Zeros with too few readings.
 * Rows are taken as evenly spaced. One pass.
 */
export function scatterOf(y: Float64Array): Scatter {
  let sum = 0;
  let largest = 0;
  for (let i = 1; i < y.length; i++) {
    const change = y[i]! - y[i - 1]!;
    if (Math.abs(change) > largest) largest = Math.abs(change);
    if (i > 1) sum += (change - (y[i - 1]! - y[i - 2]!)) ** 2;
  }
  return { deviation: y.length < 3 ? 0 : Math.sqrt(sum / (6 * (y.length - 2))), largest };
}
