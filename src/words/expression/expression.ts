/** The text of an expression → its value and what holds it, or located problems. */
import type { Place, Problem } from '../../problem.ts';
import type { Subjects } from './address.ts';
import { type Evaluated, evaluateTree, isUnheld } from './evaluate.ts';
import { isTextProblem, parseExpression } from './parse-expression.ts';
import { locate } from './text-problem.ts';

export type { Evaluated } from './evaluate.ts';

/**
 * Evaluates an expression of design section 3 over a note's subjects. `place` is where its first character stands. Units and
 * uncertainty are carried through; unknown names, absent figures, units that don't fit are problems at their own columns.
 */
export function evaluate(text: string, subjects: Subjects, place: Place): Evaluated | { readonly problems: readonly Problem[] } {
  const tree = parseExpression(text);
  if (isTextProblem(tree)) return { problems: [locate(tree, place)] };
  const outcome = evaluateTree(tree, subjects);
  return isUnheld(outcome) ? { problems: outcome.problems.map((problem) => locate(problem, place)) } : outcome;
}
