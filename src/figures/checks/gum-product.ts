/** Products of several quantities, for the worked examples. */
import { multiply } from '../../quantities/arithmetic.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { isRefusal } from '../../quantities/refusal.ts';

/** The product of all, by our arithmetic; these inputs all go together. */
export function product(factors: readonly Quantity[]): Quantity {
  return factors.reduce((a, b) => {
    const result = multiply(a, b);
    if (isRefusal(result)) throw new Error(result.refused);
    return result;
  });
}
