import { exp, log } from './elementary.ts';
import { mean } from './mean.ts';

/**
 * Geometric mean: the exponential of the mean logarithm.
 *
 * When: ratios against a reference, such as speedups over several tests; the order of the results then does not hang on the reference.
 * @param values one or more finite numbers above zero. Unit: any; the mean has the same.
 * @throws RangeError when there are none, or one is not above zero
 * Source: Fleming & Wallace, "How not to lie with statistics", Communications of the ACM 29(3), 1986, 218–221, DOI 10.1145/5666.5673.
 * Cost: three passes.
 * @example
 * geometricMean([2, 8]) // 4
 */
export function geometricMean(values: ArrayLike<number>): number {
  for (let i = 0; i < values.length; i++) {
    if (!(values[i]! > 0)) throw new RangeError(`values[${i}] is ${values[i]}, expected a number above zero`);
  }
  return exp(mean(Float64Array.from(values, log)));
}
