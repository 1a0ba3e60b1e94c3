import { mean } from './mean.ts';

/**
 * Sample standard deviation (n − 1 in the denominator), from centred squares with the rounding of the mean taken out.
 *
 * When: the spread of independent repeats. Divided by √n it is the standard uncertainty of their mean (JCGM 100:2008, 4.2.3).
 * @param values two or more finite numbers. Unit: any; the deviation has the same.
 * @throws RangeError when there are fewer than two, or one is not finite
 * Source: JCGM 100:2008, 4.2.2, eq. 4; corrected two-pass form: Chan, Golub & LeVeque, The American Statistician 37 (1983), eq. 1.7.
 * Cost: three passes.
 * @example
 * sampleDeviation([1, 2, 3]) // 1
 */
export function sampleDeviation(values: ArrayLike<number>): number {
  const n = values.length;
  if (n < 2) throw new RangeError(`found ${n} values, expected at least 2: one value has no spread`);
  const centre = mean(values);
  let squares = 0;
  let left = 0;
  for (let i = 0; i < n; i++) {
    const d = values[i]! - centre;
    squares += d * d;
    left += d;
  }
  return Math.sqrt((squares - (left * left) / n) / (n - 1));
}
