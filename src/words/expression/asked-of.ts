/** Which figures an expression or condition asks for, also where some of them are absent. */
import type { HeldBy } from '../written.ts';
import { follow, type Subjects } from './address.ts';
import { heldBy, once } from './evaluate.ts';
import type { Address, Condition, Expression } from './expression-tree.ts';
import { addressesIn, membersOf } from './members.ts';
import { isTextProblem, parseCondition, parseExpression } from './parse-expression.ts';
import type { TextProblem } from './text-problem.ts';

/** Each figure, setting, condition or rating once, in the order of the text. An address that leads nowhere names its run alone. */
export function askedOf(text: string, kind: 'expression' | 'condition', subjects: Subjects): HeldBy[] {
  const tree: Expression | Condition | TextProblem = kind === 'condition' ? parseCondition(text) : parseExpression(text);
  if (isTextProblem(tree)) return [];
  const members = membersOf(tree, subjects);
  if ('rule' in members) return [];
  return once(members.flatMap(addressesIn).flatMap((address) => leadingTo(address, subjects)));
}

function leadingTo(address: Address, subjects: Subjects): HeldBy[] {
  const found = follow(address, subjects);
  if (typeof found === 'object' && !('rule' in found)) return [heldBy(found)];
  const [alias, ...names] = address.parts.map(({ name }) => name) as [string, ...string[]];
  const subject = subjects.get(alias);
  return subject ? [{ alias, subject: subject.id, address: names.join('.') }] : [];
}
