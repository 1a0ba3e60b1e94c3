/**
 * Judges a condition on 95 % intervals: it holds, fails, or cannot be told. What two sides share cancels in their difference, and
 * `not`, `and`, `or` follow Kleene's strong three-valued logic (Introduction to Metamathematics, 1952, § 64, from memory).
 */
import { add, subtract } from '../../quantities/arithmetic.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { isRefusal } from '../../quantities/refusal.ts';
import { interval95 } from '../../quantities/uncertainty.ts';

import type { HeldBy } from '../written.ts';
import { isPlainName, type Subjects, spelled } from './address.ts';
import { differentPlaces } from './electrical.ts';
import { type Evaluated, evaluateTree, isUnheld, type Outcome, once, problemsOf, refused } from './evaluate.ts';
import type { Comparison, Condition, Expression, Extreme, Ordering, Quantified, Span } from './expression-tree.ts';
import { combinedMargins, widened } from './interval-margins.ts';
import { addressesIn, groupIn, membersOf } from './members.ts';
import { standInsOf } from './stand-ins.ts';
import type { TextProblem } from './text-problem.ts';
import { withoutUnit } from './without-unit.ts';

export type Verdict = 'holds' | 'fails' | 'cannot be told';

/** One comparison as judged, for the report: what was compared, and the difference that decided. */
export interface JudgedComparison extends Span {
  readonly verdict: Verdict;
  /** Of a group: the member that it is about, as an address. */
  readonly of?: string;
  readonly left: Quantity;
  readonly right: Quantity;
  /** left − right. */
  readonly difference: Quantity;
  /** 95 % interval of the difference; null = uncertainty unknown. */
  readonly interval: readonly [number, number] | null;
  /** What stood in for something that was not measured: then nothing is concluded. */
  readonly standsIn: readonly string[];
}

export interface Judgement {
  readonly verdict: Verdict;
  readonly comparisons: readonly JudgedComparison[];
  /** Those of them that decide: of an `all` that fails the failing ones, of an undecided one those that cannot be told. */
  readonly decisive: readonly JudgedComparison[];
  readonly held: readonly HeldBy[];
}

type Result = Judgement | { readonly problems: readonly TextProblem[] };

/** The verdict on a condition's tree, with every comparison that it rests on; or the problems of its operands. */
export function judge(tree: Condition, subjects: Subjects): Result {
  if (tree.kind === 'not') {
    const inner = judge(tree.operand, subjects);
    return 'problems' in inner ? inner : { ...inner, verdict: inverse(inner.verdict) };
  }
  if (tree.kind === 'and' || tree.kind === 'or') return join(tree.kind, judge(tree.left, subjects), judge(tree.right, subjects));
  if (tree.kind === 'quantified') return judgeEach(tree, subjects);
  if (tree.kind === 'extreme') return judgeExtreme(tree, subjects);
  return judgeComparison(tree as Comparison, subjects);
}

/** `all` is an `and` over the members, `any` an `or`, `none` the `not` of that. */
function judgeEach({ quantifier, operand }: Quantified, subjects: Subjects): Result {
  const members = membersOf(operand, subjects);
  if ('rule' in members) return { problems: [members] };
  if (!groupIn(operand)) return { problems: [withoutGroup(operand, `\`${quantifier}\``)] };
  const judged = members.map((member) => named(judge(member, subjects), member));
  const joined = judged.reduce((all, each) => join(quantifier === 'all' ? 'and' : 'or', all, each));
  if (quantifier !== 'none' || 'problems' in joined) return joined;
  return { ...joined, verdict: inverse(joined.verdict) };
}

/** Above, or below, every other member. */
function judgeExtreme({ left, among, extreme, start, end }: Extreme, subjects: Subjects): Result {
  const members = membersOf(among, subjects);
  if ('rule' in members) return { problems: [members] };
  const own = spelledOut(left);
  const others = members.filter((member) => spelledOut(member) !== own);
  if (!groupIn(among) || others.length === 0) return { problems: [withoutGroup(among, `\`is ${extreme} of\``)] };
  const operator = extreme === 'largest' ? '>' : '<';
  return others
    .map((right) => named(judgeComparison({ kind: 'ordering', operator, left, right, start, end }, subjects), right))
    .reduce((all, each) => join('and', all, each));
}

/** The addresses of a tree as text, to tell two trees apart and to name a member. */
function spelledOut(tree: Expression | Condition): string {
  return addressesIn(tree)
    .map(({ parts }) => spelled(parts.map(({ name }) => (isPlainName(name) ? name : `"${name}"`)).join('.')))
    .join(' ');
}

/** Says of each comparison which member it is of. */
function named(result: Result, member: Expression | Condition): Result {
  if ('problems' in result) return result;
  const of = spelledOut(member).split(' ')[0] as string;
  const ofMember = (all: readonly JudgedComparison[]) => all.map((each) => ({ ...each, of }));
  return { ...result, comparisons: ofMember(result.comparisons), decisive: ofMember(result.decisive) };
}

function withoutGroup({ start, end }: Span, asked: string): TextProblem {
  return {
    rule: 'expression-syntax',
    start,
    end,
    found: `${asked} without a group`,
    expected: 'a group: `*.peak_temperature`, `[rated fast].peak_temperature` or `fast.score.*`',
  };
}

const RANK: Readonly<Record<Verdict, number>> = { fails: 0, 'cannot be told': 1, holds: 2 };

function inverse(verdict: Verdict): Verdict {
  return verdict === 'cannot be told' ? verdict : verdict === 'holds' ? 'fails' : 'holds';
}

/** `and` takes the lower of two verdicts, `or` the higher. */
function join(kind: 'and' | 'or', left: Result, right: Result): Result {
  if ('problems' in left || 'problems' in right) {
    return { problems: [left, right].flatMap((side) => ('problems' in side ? side.problems : [])) };
  }
  const leftWins = kind === 'and' ? RANK[left.verdict] <= RANK[right.verdict] : RANK[left.verdict] >= RANK[right.verdict];
  const { verdict } = leftWins ? left : right;
  return {
    verdict,
    comparisons: [...left.comparisons, ...right.comparisons],
    decisive: [left, right].flatMap((side) => (side.verdict === verdict ? side.decisive : [])),
    held: once([...left.held, ...right.held]),
  };
}

/** `within` and `between` are two orderings that must both hold. */
function judgeComparison(tree: Comparison, subjects: Subjects): Result {
  const bare = bareNumbers(tree, subjects);
  if (bare.length > 0) return { problems: bare };
  if (tree.kind === 'ordering')
    return order(tree, evaluateTree(tree.left, subjects), tree.operator, evaluateTree(tree.right, subjects));
  const left = evaluateTree(tree.left, subjects);
  if (tree.kind === 'between') {
    return join(
      'and',
      order(tree, left, '>=', evaluateTree(tree.from, subjects)),
      order(tree, left, '<=', evaluateTree(tree.to, subjects)),
    );
  }
  const tolerance = evaluateTree(tree.tolerance, subjects);
  const middle = evaluateTree(tree.of, subjects);
  const low = ends(tree.tolerance, middle, tolerance, subtract);
  const high = ends(tree.tolerance, middle, tolerance, add);
  return join('and', order(tree, left, '>=', low), order(tree, left, '<=', high));
}

/** Numbers without a unit beside a side that has one. */
function bareNumbers(tree: Comparison, subjects: Subjects): TextProblem[] {
  const sides: { readonly tree: Expression; readonly tolerance?: boolean; readonly sign?: string }[] =
    tree.kind === 'ordering'
      ? [{ tree: tree.left }, { tree: tree.right, sign: tree.operator }]
      : tree.kind === 'between'
        ? [{ tree: tree.left }, { tree: tree.from }, { tree: tree.to }]
        : [{ tree: tree.left }, { tree: tree.tolerance, tolerance: true }, { tree: tree.of }];
  const measured = sides
    .filter((side) => side.tree.kind !== 'literal')
    .map((side) => evaluateTree(side.tree, subjects))
    .find((side) => !isUnheld(side) && side.quantity.unit !== '1');
  if (!measured || isUnheld(measured)) return [];
  return sides.flatMap(({ tree: side, ...more }) => withoutUnit(side, measured, more) ?? []);
}

/** One end of `within`: middle ± tolerance. */
function ends(span: Expression, middle: Outcome, tolerance: Outcome, operation: typeof add): Outcome {
  if (isUnheld(middle) || isUnheld(tolerance)) return isUnheld(middle) ? middle : tolerance;
  if (tolerance.quantity.unit === '°C') {
    return problem({
      rule: 'refused-arithmetic',
      start: span.start,
      end: span.end,
      found: 'a tolerance in °C',
      expected: 'a difference in K',
    });
  }
  const quantity = operation(middle.quantity, tolerance.quantity);
  if (isRefusal(quantity)) return problem(refused(quantity, span));
  const slack = combinedMargins([middle.slack, tolerance.slack], [1, operation === add ? 1 : -1]);
  return { quantity, held: once([...middle.held, ...tolerance.held]), at: middle.at, slack };
}

function problem(found: TextProblem): { readonly problems: readonly TextProblem[] } {
  return { problems: [found] };
}

function order(span: Span, left: Outcome, operator: Ordering['operator'], right: Outcome): Result {
  if (isUnheld(left) || isUnheld(right)) return { problems: problemsOf([left, right]) };
  const apart = differentPlaces([left, right], span);
  if (apart && isUnheld(apart)) return apart;
  return compare(span, left, operator, right);
}

function compare({ start, end }: Span, left: Evaluated, operator: Ordering['operator'], right: Evaluated): Result {
  const mixed = (left.quantity.unit === '°C') !== (right.quantity.unit === '°C');
  const difference = subtract(left.quantity, right.quantity);
  if (isRefusal(difference)) return problem(refused(difference, { start, end }));
  if (mixed) {
    const found = `a value in ${left.quantity.unit} compared with one in ${right.quantity.unit}`;
    return problem({ rule: 'refused-arithmetic', start, end, found, expected: 'two temperatures, or two differences' });
  }
  const interval = intervalOf(left, right, difference);
  const held = once([...left.held, ...right.held]);
  const standsIn = standInsOf(held);
  const verdict = interval && standsIn.length === 0 ? decide(interval, operator) : 'cannot be told';
  const judged = { start, end, verdict, left: left.quantity, right: right.quantity, difference, interval, standsIn };
  return { verdict, comparisons: [judged], decisive: [judged], held };
}

/** A figure's own, maybe lopsided interval where it alone is uncertain; else that of the difference. */
function intervalOf(left: Evaluated, right: Evaluated, difference: Quantity): readonly [number, number] | null {
  const own = left.figure?.interval;
  if (own && isExact(right.quantity)) return [own[0] - right.quantity.value, own[1] - right.quantity.value];
  const other = right.figure?.interval;
  if (other && isExact(left.quantity)) return [left.quantity.value - other[1], left.quantity.value - other[0]];
  const known = interval95(difference);
  return known && widened(known, combinedMargins([left.slack, right.slack], [1, -1]));
}

function isExact({ parts }: Quantity): boolean {
  return parts !== null && parts.length === 0;
}

function decide([low, high]: readonly [number, number], operator: Ordering['operator']): Verdict {
  switch (operator) {
    case '<':
      return high < 0 ? 'holds' : low >= 0 ? 'fails' : 'cannot be told';
    case '<=':
      return high <= 0 ? 'holds' : low > 0 ? 'fails' : 'cannot be told';
    case '>':
      return low > 0 ? 'holds' : high <= 0 ? 'fails' : 'cannot be told';
    case '>=':
      return low >= 0 ? 'holds' : high < 0 ? 'fails' : 'cannot be told';
  }
}
