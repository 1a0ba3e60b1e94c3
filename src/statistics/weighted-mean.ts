/**
 * Weighted arithmetic mean, with the rounding of a first pass taken out by a second.
 *
 * When: readings that stand for unequal stretches of time.
 * @param values finite numbers. Unit: any; the mean has the same.
 * @param weights one a value, not negative. Unit: any, often s. Default: 1 each.
 * @returns the mean (NaN for no values) and the total weight
 * @throws RangeError for unequal lengths, a weight that is negative or not finite, or values whose weights sum to zero
 * Source: JCGM 100:2008, F.1.2.4 speaks of weights in general; the formula is common practice, no source.
 * Cost: two passes.
 * @example
 * weightedMean([1, 4], [2, 1]) // { mean: 2, total: 3 }
 */
export function weightedMean(
  values: ArrayLike<number>,
  weights?: ArrayLike<number>,
): { readonly mean: number; readonly total: number } {
  const total = totalWeight(values, weights);
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]! * (weights ? weights[i]! : 1);
  const first = sum / total;
  let left = 0;
  for (let i = 0; i < values.length; i++) left += (values[i]! - first) * (weights ? weights[i]! : 1);
  return { mean: first + left / total, total };
}

function totalWeight(values: ArrayLike<number>, weights: ArrayLike<number> | undefined): number {
  if (!weights) return values.length;
  if (weights.length !== values.length) throw new RangeError(`found ${weights.length} weights for ${values.length} values`);
  let total = 0;
  for (let i = 0; i < weights.length; i++) {
    const weight = weights[i]!;
    if (!(weight >= 0 && Number.isFinite(weight))) throw new RangeError(`weights[${i}] is ${weight}, expected 0 or more`);
    total += weight;
  }
  if (total === 0 && values.length > 0) throw new RangeError('the weights sum to 0, expected more');
  return total;
}
