/** Which of two runs a sentence says has more, and whether the data says so: "5.5 K hotter than the brisk one". */
import { isPresent } from '../../figures/figure.ts';
import { addressedFigure, type Subjects } from '../expression/address.ts';
import type { Address, Expression } from '../expression/expression-tree.ts';
import { isTextProblem, parseExpression } from '../expression/parse-expression.ts';
import { wayOf } from '../stated/comparison-words.ts';
import type { Stated } from '../stated/stated-number.ts';
import { isOne } from './direction.ts';

/** What stands in the sentence around the number and its words of comparison. */
export interface Sentence {
  readonly before: string;
  readonly after: string;
}

/** Aliases of the two runs that an expression compares. */
interface Sides {
  readonly left: string;
  readonly right: string;
  /** Whether the left one has more. */
  readonly leftHasMore: boolean;
  /** Whether times are compared: who is faster has less of it. */
  readonly ofTime: boolean;
}

/**
 * The alias that the sentence compares with, where it says of the two runs the opposite of what the expression gives; undefined where they
 * agree, and where the sentence does not say which run it compares with which. `value`: of the expression.
 */
export function turnedRound(
  said: Stated,
  { before, after }: Sentence,
  expression: string,
  value: number,
  subjects: Subjects,
): string | undefined {
  const tree = parseExpression(expression);
  const sides = isTextProblem(tree) ? undefined : sidesOf(tree, value, subjects);
  const kind = sides && wayIn(said, before, sides.ofTime);
  if (!sides || kind === undefined) return undefined;
  const other = comparedWith(sides, { before, after }, subjects);
  if (other === undefined) return undefined;
  const saysLeftHasMore = (kind === 'more') === (other === sides.right);
  return saysLeftHasMore === sides.leftHasMore ? undefined : other;
}

/** More or less, by the words themselves; of "by 13.5 K" by the verb before it. */
function wayIn({ said: { comparison, text } }: Stated, before: string, ofTime: boolean): 'more' | 'less' | undefined {
  if (!comparison) return undefined;
  const words = text.slice(comparison.start, comparison.end);
  if (ofTime && /^(?:faster|quicker|slower)\b/i.test(words)) return comparison.kind === 'more' ? 'less' : 'more';
  if (comparison.kind !== 'apart') return comparison.kind;
  return /^by\b/i.test(words) ? wayOf(/(\p{L}+)\s*$/u.exec(before)?.[1]?.toLowerCase() ?? '') : undefined;
}

/** `a.x - b.x`, `a.x / b.x`, each less one or taken from one, and a comparison's own differences and ratios. */
function sidesOf(tree: Expression, value: number, subjects: Subjects): Sides | undefined {
  if (tree.kind === 'address') return ofComparison(tree, value, subjects);
  if (tree.kind !== 'operation') return undefined;
  const { operator, left, right } = tree;
  if (left.kind === 'address' && right.kind === 'address' && (operator === '-' || operator === '/')) {
    const [a, b] = [left.parts[0]!.name, right.parts[0]!.name];
    const runs = [a, b].every((alias) => subjects.get(alias)?.kind === 'run');
    const leftHasMore = operator === '-' ? value > 0 : value > 1;
    return runs && a !== b ? { left: a, right: b, leftHasMore, ofTime: isTime(left, subjects) } : undefined;
  }
  if (operator !== '-') return undefined;
  if (isOne(right)) return sidesOf(left, value + 1, subjects);
  return isOne(left) ? sidesOf(right, 1 - value, subjects) : undefined;
}

function isTime(address: Address, subjects: Subjects): boolean {
  const figure = addressedFigure(address, subjects);
  return figure !== undefined && isPresent(figure) && figure.quantity.unit === 's';
}

/** A difference has a unit, and is above zero where the run has more; a ratio is above one. */
function ofComparison(address: Address, value: number, subjects: Subjects): Sides | undefined {
  const of = addressedFigure(address, subjects)?.of;
  const [run, reference] = [of?.run, of?.reference];
  if (typeof run !== 'string' || typeof reference !== 'string') return undefined;
  const isDelta = addressedFigure(address, subjects)!.name.endsWith('_delta');
  return { left: run, right: reference, leftHasMore: isDelta ? value > 0 : value > 1, ofTime: false };
}

/** "Than the brisk one", with a few words between at most; or "from brisk to quick", which compares with brisk. */
const THAN = /^(?:[^.,;:!?()]{0,60}?\s)?than\s+([^.,;:!?()]{1,60})/u;
const FROM_TO = /\bfrom\s+([^.,;:!?()]{1,40}?)\s+to\s+([^.,;:!?()]{1,40})/giu;

function comparedWith({ left, right }: Sides, { before, after }: Sentence, subjects: Subjects): string | undefined {
  const names = ownNames(left, right, subjects);
  const than = THAN.exec(after)?.[1];
  if (than !== undefined) return namedFirst(than, names);
  const moved = [...before.matchAll(FROM_TO)].at(-1);
  const [from, to] = [moved?.[1], moved?.[2]].map((text) => (text === undefined ? undefined : namedFirst(text, names)));
  return from !== undefined && to !== undefined && from !== to ? from : undefined;
}

type Names = ReadonlyMap<string, string>;

/** The words of two runs' aliases and titles that only one of them has, each with its alias. */
function ownNames(left: string, right: string, subjects: Subjects): Names {
  const words = (alias: string) => new Set(wordsOf(`${alias} ${subjects.get(alias)?.title ?? ''}`));
  const [a, b] = [words(left), words(right)];
  return new Map([
    ...[...a].filter((word) => !b.has(word)).map((word) => [word, left] as const),
    ...[...b].filter((word) => !a.has(word)).map((word) => [word, right] as const),
  ]);
}

/** The alias whose name comes first in some words. */
function namedFirst(text: string, names: Names): string | undefined {
  const word = wordsOf(text).find((each) => names.has(each));
  return word === undefined ? undefined : names.get(word);
}

function wordsOf(text: string): string[] {
  return text.toLowerCase().match(/\p{L}{3,}/gu) ?? [];
}
