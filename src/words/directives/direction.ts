/** Whether words of more or less go the way that the expression behind them counts. */
import { addressedFigure, type Subjects } from '../expression/address.ts';
import type { Expression } from '../expression/expression-tree.ts';
import { isTextProblem, parseExpression } from '../expression/parse-expression.ts';
import type { Stated } from '../stated/stated-number.ts';

/** What a value above zero means: 1 for more than what it is compared with, −1 for less. */
export type Sense = 1 | -1;

/** The words with the sense of their expression, where its shape tells that by itself. */
export function sensed(said: Stated, expression: string, subjects: Subjects): Stated {
  const tree = parseExpression(expression);
  const sense = isTextProblem(tree) ? undefined : senseOf(tree, subjects);
  return sense === undefined ? said : { ...said, sense };
}

/** `power_delta` and `speedup - 1` count upwards, `1 - speedup` downwards; which way `a - b` is meant only its sentence tells. */
function senseOf(tree: Expression, subjects: Subjects): Sense | undefined {
  if (tree.kind === 'negation') return reversed(senseOf(tree.operand, subjects));
  if (tree.kind === 'address') return addressedFigure(tree, subjects)?.name.endsWith('_delta') ? 1 : undefined;
  if (tree.kind !== 'operation' || tree.operator !== '-') return undefined;
  if (isOne(tree.right)) return isOne(tree.left) ? undefined : 1;
  return isOne(tree.left) ? -1 : undefined;
}

function reversed(sense: Sense | undefined): Sense | undefined {
  return sense === undefined ? undefined : sense === 1 ? -1 : 1;
}

/** Whether it is the number one, as in `speedup - 1`. */
export function isOne(tree: Expression): boolean {
  return tree.kind === 'literal' && tree.unit === null && Number(tree.number) === 1;
}
