import { mean } from './mean.ts';
import { sampleDeviation } from './sample-deviation.ts';
import { studentQuantile } from './student-quantile.ts';

/** The value that lies furthest from the mean of all. */
export interface Furthest {
  /** Its index. */
  readonly at: number;
  /** Its distance from the mean in sample standard deviations. */
  readonly distance: number;
  /** Beyond it the value is an outlier at the level that was asked for. */
  readonly critical: number;
}

/**
 * Grubbs' test, two-sided, for one outlier among normal values.
 *
 * When: a repeat looks unlike the others; it tells that one is, not why, and a value that is one still belongs to the data.
 * @param values three or more finite numbers, not all equal. Unit: any.
 * @param level chance of an outlier where there is none, 0.05 for instance
 * @throws RangeError for fewer than three values, or a level that is not between 0 and 1
 * Source: F. E. Grubbs and G. Beck, Technometrics 14, 1972, 847–854 (from memory); the critical value by Student's t, as
 *   NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.1, has it (from memory).
 * Cost: three passes.
 * @example
 * grubbs([1, 2, 3, 2, 10], 0.05).at // 4
 * grubbs([1, 1, 1], 0.05) // null
 */
export function grubbs(values: readonly number[], level: number): Furthest | null {
  const n = values.length;
  if (n < 3) throw new RangeError(`${n} values, expected three or more`);
  if (!(level > 0 && level < 1)) throw new RangeError(`level is ${level}, expected above 0 and below 1`);
  const [centre, spread] = [mean(values), sampleDeviation(values)];
  if (spread === 0) return null;
  const distances = values.map((value) => Math.abs(value - centre) / spread);
  const distance = Math.max(...distances);
  const t = studentQuantile(1 - level / (2 * n), n - 2);
  const critical = ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t));
  return { at: distances.indexOf(distance), distance, critical };
}
