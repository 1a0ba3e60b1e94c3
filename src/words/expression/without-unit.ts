/** A bare number beside a value that has a unit: what is missing, and what to write. */
import { printQuantity } from '../../quantities/print.ts';
import type { Evaluated } from './evaluate.ts';
import type { Expression } from './expression-tree.ts';
import type { TextProblem } from './text-problem.ts';

/** The problem of a literal without a unit where one is needed; a tolerance of a temperature is a difference. `sign` is the comparison as typed. */
export function withoutUnit(
  tree: Expression,
  { quantity }: Evaluated,
  { sign = '', tolerance = false }: { readonly sign?: string; readonly tolerance?: boolean } = {},
): TextProblem | undefined {
  if (tree.kind !== 'literal' || tree.unit !== null || quantity.unit === '1') return undefined;
  const unit = tolerance && quantity.unit === '°C' ? 'K' : printQuantity(quantity).unit;
  return {
    rule: 'refused-arithmetic',
    start: tree.start,
    end: tree.end,
    found: `${tree.number} has no unit, and is compared with a value in ${unit}`,
    expected: 'a number with its unit',
    remedy: `write \`${sign === '' ? '' : `${sign} `}${tree.number} ${unit}\``,
  };
}
