/** An expression's tree → its value with unit and uncertainty, and the figures that hold it. */
import { isPresent, type PresentFigure } from '../../figures/figure.ts';
import { listed } from '../../figures/in-words.ts';
import { absolute, add, divide, maximum, mean, minimum, multiply, negate, subtract } from '../../quantities/arithmetic.ts';
import { printQuantity } from '../../quantities/print.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { isRefusal, type Refusal } from '../../quantities/refusal.ts';
import { nearestUnit, readUnit, toCanonical } from '../../quantities/units.ts';
import type { HeldBy } from '../written.ts';
import { type Destination, follow, type Subjects } from './address.ts';
import { boundWords } from './bound-words.ts';
import { differentPlaces, isElectrical } from './electrical.ts';
import type { Address, Call, Expression, Literal, Operation, Span } from './expression-tree.ts';
import { combinedMargins, type Margins, marginsOfFigure, NONE } from './interval-margins.ts';
import { groupIn, membersOf } from './members.ts';
import type { TextProblem } from './text-problem.ts';

export interface Evaluated {
  readonly quantity: Quantity;
  /** Each figure, setting, condition or rating once, in the order of the expression. */
  readonly held: readonly HeldBy[];
  /** Where the electrical readings behind it were taken; empty where the value is not electrical. */
  readonly at: readonly string[];
  /** How much further its 95 % interval reaches than its parts tell. */
  readonly slack: Margins;
  /** The figure itself, where the expression is nothing but its address. */
  readonly figure?: PresentFigure;
}

/** A value, or why there is none: no problems where a log could not be used, which is reported with the log. */
export type Outcome = Evaluated | { readonly problems: readonly TextProblem[] };

/** Tells problems from a value. */
export function isUnheld(outcome: Outcome): outcome is { readonly problems: readonly TextProblem[] } {
  return 'problems' in outcome;
}

/** Evaluates a tree. All problems of its operands are reported, not the first alone; an absent operand makes the whole absent. */
export function evaluateTree(tree: Expression, subjects: Subjects): Outcome {
  switch (tree.kind) {
    case 'address':
      return groupIn(tree) ? aGroup(tree) : evaluateAddress(tree, subjects);
    case 'literal':
      return evaluateLiteral(tree, subjects);
    case 'negation':
      return combine(
        tree,
        [evaluateTree(tree.operand, subjects)],
        ([operand]) => negate(operand as Quantity),
        () => [-1],
      );
    case 'operation':
      return evaluateOperation(tree, subjects);
    case 'call':
      return evaluateCall(tree, subjects);
  }
}

function evaluateAddress(address: Address, subjects: Subjects): Outcome {
  const destination = follow(address, subjects);
  if (destination === 'unusable') return { problems: [] };
  if ('rule' in destination) return { problems: [destination] };
  if ('fact' in destination) return { quantity: destination.fact, held: [heldBy(destination)], at: [], slack: NONE };
  const { figure, alias, key } = destination;
  if (!isPresent(figure)) {
    const bounded = boundWords(figure);
    const bound = bounded === undefined ? '' : ` It is ${bounded}.`;
    return one({
      rule: 'absent-figure',
      start: address.start,
      end: address.end,
      found: `\`${alias}.${key}\` is absent: ${withoutStop(`${figure.why}${bound}`)}`,
      expected: 'a figure that the data gives',
      remedy: 'say in words that it is absent, or show it in a `::table`, which prints the reason',
    });
  }
  const place = figure.of?.at;
  const at = typeof place === 'string' && isElectrical(figure.quantity.unit) ? [place] : [];
  return { quantity: figure.quantity, held: [heldBy(destination)], at, slack: marginsOfFigure(figure), figure };
}

/** What the ledger says of a figure that holds a number. */
export function heldBy(destination: Destination): HeldBy {
  const { alias, subject, key } = destination;
  if (!('figure' in destination)) return { alias, subject: subject.id, address: key };
  const { name, of } = destination.figure;
  const standsIn = typeof of?.stands_in === 'string' ? { standsIn: of.stands_in } : {};
  const quoted = typeof of?.quoted === 'string' ? { quoted: of.quoted } : {};
  return { alias, subject: subject.id, address: key, figure: name, ...standsIn, ...quoted };
}

function evaluateLiteral({ number, unit, start, end }: Literal, subjects: Subjects): Outcome {
  const value = Number(number);
  if (!Number.isFinite(value))
    return one({ rule: 'expression-syntax', start, end, found: `\`${number}\``, expected: 'a finite number' });
  if (unit === null) return exact(value, '1');
  const known = readUnit(unit.text);
  if (known) return exact(toCanonical(value, known), known.canonical);
  if (isOwnWord(unit.text, subjects)) return exact(value, unit.text);
  const near = nearestUnit(unit.text);
  const found = `unknown unit \`${unit.text}\``;
  return one({
    rule: 'unknown-unit',
    start: unit.start,
    end: unit.end,
    found,
    expected: 'a unit, or the word of a score',
    ...(near ? { remedy: `did you mean \`${near}\`?` } : {}),
  });
}

function exact(value: number, unit: string): Outcome {
  return { quantity: { value, unit, parts: [] }, held: [], at: [], slack: NONE };
}

/** Whether a word is the unit of one of the subjects' scores. */
function isOwnWord(unit: string, subjects: Subjects): boolean {
  for (const { figures } of subjects.values()) {
    for (const figure of figures.values()) if (isPresent(figure) && figure.quantity.unit === unit) return true;
  }
  return false;
}

const OPERATIONS = { '+': add, '-': subtract, '*': multiply, '/': divide } as const;

function evaluateOperation(tree: Operation, subjects: Subjects): Outcome {
  const operands = [evaluateTree(tree.left, subjects), evaluateTree(tree.right, subjects)];
  const additive = tree.operator === '+' || tree.operator === '-';
  const apart = additive ? differentPlaces(operands, tree) : undefined;
  const [left, right] = operands as [Outcome, Outcome];
  const operation = OPERATIONS[tree.operator];
  return apart ?? combine(tree, [left, right], ([a, b]) => operation(a as Quantity, b as Quantity), sensitivitiesOf(tree.operator));
}

/** An extreme takes the slack of all its operands: which of them it is may turn on it. */
const LISTS = {
  sum: { make: total, sensitivities: (values: readonly number[]) => values.map(() => 1) },
  min: { make: minimum, sensitivities: (values: readonly number[]) => values.map(() => 1) },
  max: { make: maximum, sensitivities: (values: readonly number[]) => values.map(() => 1) },
  mean: { make: mean, sensitivities: (values: readonly number[]) => values.map(() => 1 / values.length) },
} as const;

function total([first, ...more]: readonly Quantity[]): Quantity | Refusal {
  return more.reduce<Quantity | Refusal>((sum, each) => (isRefusal(sum) ? sum : add(sum, each)), first as Quantity);
}

/** A group where one value is needed. */
function aGroup(address: Address): Outcome {
  return one({
    rule: 'expression-syntax',
    start: address.start,
    end: address.end,
    found: 'a group of values where one is needed',
    expected: '`min`, `max`, `mean` or `count` of it, or a claim with `all`, `any` or `none`',
  });
}

function evaluateCall(call: Call, subjects: Subjects): Outcome {
  const members = call.operands.map((operand) => membersOf(operand, subjects));
  const problems = members.filter((each) => 'rule' in each);
  if (problems.length > 0) return { problems };
  const tree: Call = { ...call, operands: (members as Expression[][]).flat() };
  if (tree.name === 'kinds') return kinds(tree.operands, subjects);
  const operands = tree.operands.map((operand) => evaluateTree(operand, subjects));
  if (tree.name === 'count') return counted(operands);
  if (tree.name === 'same') return same(operands, tree);
  const mixed = tree.name === 'mean' || tree.name === 'sum' ? quotedAmong(operands, tree) : undefined;
  if (mixed) return mixed;
  if (tree.name !== 'abs')
    return differentPlaces(operands, tree) ?? combine(tree, operands, LISTS[tree.name].make, LISTS[tree.name].sensitivities);
  if (operands.length === 1)
    return combine(
      tree,
      operands,
      ([operand]) => absolute(operand as Quantity),
      ([value = 0]) => [value < 0 ? -1 : 1],
    );
  return one({
    rule: 'expression-syntax',
    start: tree.start,
    end: tree.end,
    found: `\`abs\` of ${operands.length} operands`,
    expected: 'one',
  });
}

/** A mean or a sum over own and quoted figures: what somebody else measured is never mixed with own runs. */
function quotedAmong(operands: readonly Outcome[], { name, start, end }: Call): Outcome | undefined {
  const held = operands.flatMap((operand) => (isUnheld(operand) ? [] : operand.held));
  const quoted = held.find((each) => each.quoted !== undefined);
  if (!quoted || held.every((each) => each.quoted !== undefined)) return undefined;
  return one({
    rule: 'refused-arithmetic',
    start,
    end,
    found: `\`${name}\` of own figures and of \`${quoted.alias}.${quoted.address}\`, which is quoted`,
    expected: `a \`${name}\` of own figures, and the quoted one beside it`,
  });
}

/** How many there are; each of them must be there. */
function counted(operands: readonly Outcome[]): Outcome {
  if (operands.some(isUnheld)) return { problems: problemsOf(operands) };
  const held = once((operands as readonly Evaluated[]).flatMap((operand) => operand.held));
  return { quantity: { value: operands.length, unit: '1', parts: [] }, held, at: [], slack: NONE };
}

/** How many different ones there are among values that are exact, or among names: settings, specimens. */
function kinds(operands: readonly Expression[], subjects: Subjects): Outcome {
  const named = operands.map((operand) => nameOf(operand, subjects) ?? evaluateTree(operand, subjects));
  const problems = problemsOf(named.filter((each) => 'problems' in each));
  if (named.some((each) => 'problems' in each)) return { problems };
  const found = named as readonly (Evaluated | Named)[];
  const measured = found.findIndex((each) => 'quantity' in each && each.quantity.parts?.length !== 0);
  if (measured >= 0) return notExact(operands[measured] as Expression);
  const different = new Set(found.map((each) => ('name' in each ? each.name : `${each.quantity.value} ${each.quantity.unit}`)));
  const held = once(found.flatMap((each) => each.held));
  return { quantity: { value: different.size, unit: '1', parts: [] }, held, at: [], slack: NONE };
}

/** The one value that exact members share: "every benchmark five repeats", "both at 2.0 GHz". */
function same(operands: readonly Outcome[], { start, end }: Span): Outcome {
  if (operands.some(isUnheld)) return { problems: problemsOf(operands) };
  const members = operands as readonly Evaluated[];
  const [first] = members as readonly [Evaluated];
  if (members.some(({ quantity }) => quantity.parts?.length !== 0))
    return refusedGroup({ start, end }, '`same` of a measured value');
  const shown = [...new Set(members.map(({ quantity }) => printQuantity(quantity).text))];
  if (shown.length === 1) return { ...first, held: once(members.flatMap(({ held }) => held)) };
  return one({
    rule: 'refused-arithmetic',
    start,
    end,
    found: `\`same\` of values that differ: ${listed(shown)}`,
    expected: 'one value',
  });
}

/** Measured values are hardly ever the same, so that counting different ones says nothing. */
function notExact(span: Span): Outcome {
  return refusedGroup(span, '`kinds` of a measured value');
}

function refusedGroup({ start, end }: Span, found: string): Outcome {
  return one({ rule: 'refused-arithmetic', start, end, found, expected: 'settings, ratings, `specimen` or `device`' });
}

interface Named {
  readonly name: string;
  readonly held: readonly HeldBy[];
}

/** What an address such as `fast.specimen` names, or undefined where it is no name. */
function nameOf(tree: Expression, subjects: Subjects): Named | undefined {
  if (tree.kind !== 'address' || tree.parts.length !== 2) return undefined;
  const [alias, key] = tree.parts.map(({ name }) => name) as [string, string];
  const subject = subjects.get(alias);
  const name = subject?.names?.get(key);
  return subject && name !== undefined ? { name, held: [{ alias, subject: subject.id, address: key }] } : undefined;
}

type Sensitivities = (values: readonly number[]) => readonly number[];

/** How a result changes with each of two operands. */
function sensitivitiesOf(operator: Operation['operator']): Sensitivities {
  return ([a = 0, b = 0]) => ({ '+': [1, 1], '-': [1, -1], '*': [b, a], '/': [1 / b, -a / (b * b)] })[operator];
}

/** Puts operands together, unless one of them has problems or the arithmetic refuses. */
function combine(
  span: Span,
  operands: readonly Outcome[],
  make: (quantities: readonly Quantity[]) => Quantity | Refusal,
  sensitivities: Sensitivities,
): Outcome {
  if (operands.some(isUnheld)) return { problems: problemsOf(operands) };
  const evaluated = operands as readonly Evaluated[];
  const quantity = make(evaluated.map((operand) => operand.quantity));
  if (isRefusal(quantity)) return one(refused(quantity, span));
  const at = isElectrical(quantity.unit) ? [...new Set(evaluated.flatMap((operand) => operand.at))].sort() : [];
  const weights = sensitivities(evaluated.map((operand) => operand.quantity.value));
  const slack = combinedMargins(
    evaluated.map((operand) => operand.slack),
    weights,
  );
  return { quantity, held: once(evaluated.flatMap((operand) => operand.held)), at, slack };
}

/** The problems of all operands together. */
export function problemsOf(operands: readonly Outcome[]): readonly TextProblem[] {
  return operands.flatMap((operand) => (isUnheld(operand) ? operand.problems : []));
}

/** A refusal of the arithmetic, at the expression that asked for it. */
export function refused({ refused: found, expected }: Refusal, { start, end }: Span): TextProblem {
  return { rule: 'refused-arithmetic', start, end, found, ...(expected === undefined ? {} : { expected }) };
}

/** The same list with each figure once, first mention first. */
export function once(held: readonly HeldBy[]): HeldBy[] {
  const names = held.map(({ alias, address }) => `${alias}.${address}`);
  return held.filter((_, index) => names.indexOf(names[index] as string) === index);
}

function one(problem: TextProblem): Outcome {
  return { problems: [problem] };
}

function withoutStop(sentence: string): string {
  return sentence.replace(/\.$/, '');
}
