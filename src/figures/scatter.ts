/** The scatter of single readings, told from neighbours so that a slow drift does not count as scatter. */

export interface Steps {
  /** √(mean square successive difference / 2), in the unit of the readings. */
  readonly deviation: number;
  /** Largest change from one reading to the next. */
  readonly largest: number;
}

/**
 * Scatter by successive differences (J. von Neumann et al., Annals of Mathematical Statistics 12, 1941, 153–162) and the
 * largest change between neighbours. Zeros with fewer than two readings. One pass.
 */
export function successiveDifferences(y: Float64Array): Steps {
  let sum = 0;
  let largest = 0;
  for (let i = 1; i < y.length; i++) {
    const change = Math.abs(y[i]! - y[i - 1]!);
    sum += change * change;
    if (change > largest) largest = change;
  }
  return { deviation: y.length < 2 ? 0 : Math.sqrt(sum / (2 * (y.length - 1))), largest };
}
