/** What a `:value` prints, for the rule that looks for numbers beside it. */
import { printQuantity } from '../../quantities/print.ts';
import type { Subjects } from '../expression/address.ts';
import { evaluateTree, isUnheld } from '../expression/evaluate.ts';
import { isTextProblem, parseExpression } from '../expression/parse-expression.ts';

/** Takes the words between the brackets; undefined where they give no value. */
export function shownValue(subjects: Subjects): (label: string) => string | undefined {
  return (label) => {
    const tree = parseExpression(label);
    const outcome = isTextProblem(tree) ? undefined : evaluateTree(tree, subjects);
    return outcome && !isUnheld(outcome) ? printQuantity(outcome.quantity).text.replaceAll('\u00a0', ' ') : undefined;
  };
}
