/** Whether an expression counts happenings or members, so that its value is a whole number of them. */
import { follow, type Subjects } from './address.ts';
import type { Expression } from './expression-tree.ts';
import { membersOf } from './members.ts';
import { isTextProblem, parseExpression } from './parse-expression.ts';

/** Throttle events, what came of attempts, `count` and `kinds`, whole numbers, and sums, differences and extremes of these. */
export function isCount(expression: string, subjects: Subjects): boolean {
  const tree = parseExpression(expression);
  return !isTextProblem(tree) && counts(tree, subjects);
}

function counts(tree: Expression, subjects: Subjects): boolean {
  switch (tree.kind) {
    case 'address': {
      const members = membersOf(tree, subjects);
      if ('rule' in members) return false;
      return members.every((each) => {
        const found = follow(each, subjects);
        if (typeof found === 'string' || 'rule' in found) return false;
        return 'fact' in found ? found.subject.kind === 'attempts' : found.figure.name === 'throttle_events';
      });
    }
    case 'literal':
      return tree.unit === null && Number.isInteger(Number(tree.number));
    case 'negation':
      return counts(tree.operand, subjects);
    case 'operation':
      return /[+-]/.test(tree.operator) && counts(tree.left, subjects) && counts(tree.right, subjects);
    case 'call':
      if (tree.name === 'count' || tree.name === 'kinds') return true;
      return tree.name !== 'mean' && tree.operands.every((operand) => counts(operand, subjects));
  }
}
