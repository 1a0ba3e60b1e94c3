/** Claims that would hold a rank: "the second fastest of the four" as a condition about a group of runs. */
import { compareText } from '../../problem.ts';
import { judge } from '../../words/expression/condition.ts';
import { isTextProblem, parseCondition } from '../../words/expression/parse-expression.ts';
import { wayOf } from '../../words/stated/comparison-words.ts';
import type { Bearing } from './bearing.ts';
import type { Candidate } from './candidates.ts';
import type { ContextWord } from './context.ts';
import { groupsOf } from './counts.ts';
import type { Offer } from './offers.ts';
import { contextScore, wordsAlone } from './rank.ts';

const PLACES = 'first second third fourth fifth sixth seventh eighth ninth tenth'.split(' ');
const MOST = 3;
/** What scores less has no word of the sentence in it. */
const LEAST = 0.5;

/** Conditions that the data decides as the words say, the likeliest first. */
export function rankClaims(words: string, context: readonly ContextWord[], bearing: Bearing): Offer[] {
  const all = [...context, ...wordsAlone(words)];
  const low = words.toLowerCase();
  const own = context.filter((word) => word.own === true);
  const ofSame = Map.groupBy(
    bearing.candidates.filter(({ fact, subject }) => !fact && subject.kind === 'run'),
    ({ alias, is }) => is.slice(alias.length + 1),
  );
  const found = groupsOf(all, bearing.subjects, bearing.words).flatMap(({ list, aliases, title, score: ofGroup }) =>
    [...ofSame].flatMap(([address, members]) => {
      const group = members.filter(({ alias }) => aliases.includes(alias));
      if (group.length < aliases.length || group.length < 3) return [];
      const place = placeOf(low, group.length);
      const isTime = group[0]!.quantity.unit === 's';
      const ranked = group.toSorted((a, b) => b.quantity.value - a.quantity.value);
      if (isLess(low) !== (isTime && /\b(?:fast|quick|slow)|rank|came|come|place/.test(low))) ranked.reverse();
      const meant = ranked[place - 1];
      if (!meant || !isNamed(meant, own, bearing, aliases)) return [];
      const score = contextScore(meant, all, bearing.words) + ofGroup;
      const is = conditionOf(ranked, place - 1, { list, address });
      return score < LEAST
        ? []
        : [{ is, shown: shownOf(ranked), title: `${title}, by ${address}`, narrow: false, claim: true as const, score }];
    }),
  );
  return found
    .filter(({ is }) => holds(is, bearing))
    .sort((a, b) => b.score - a.score || compareText(a.is, b.is))
    .slice(0, MOST)
    .map(({ score: _, ...offer }) => offer);
}

/** The place that the words name, from 1. */
function placeOf(low: string, count: number): number {
  if (/\blast\b/.test(low)) return count;
  const digits = /\b(\d+)(?:st|nd|rd|th)\b|\bno\.\s*(\d+)/.exec(low);
  if (digits) return Number(digits[1] ?? digits[2]);
  const at = PLACES.findIndex((word) => new RegExp(`\\b${word}\\b`).test(low));
  return at < 0 ? 1 : at + 1;
}

/** Whether the first of them has the least: "the coolest", "the least hungry". */
function isLess(low: string): boolean {
  if (/\bleast\b|\bworst\b/.test(low)) return true;
  const superlative = /\b(\p{L}+?)(?:est)\b/u.exec(low)?.[1] ?? '';
  return wayOf(`${superlative}er`) === 'less' || /^(?:cheap|quiet|light)$/.test(superlative);
}

/** Whether the sentence names its run, or none of the group. */
function isNamed({ alias }: Candidate, own: readonly ContextWord[], { words }: Bearing, aliases: readonly string[]): boolean {
  const names = (each: string) => own.some(({ word }) => (words.get(each) ?? [each]).includes(word));
  const named = aliases.filter(names);
  return named.length === 0 || named.includes(alias);
}

function conditionOf(
  ranked: readonly Candidate[],
  at: number,
  { list, address }: { readonly list: string; readonly address: string },
): string {
  const own = ranked[at]!;
  const descends = (ranked[0]?.quantity.value ?? 0) > (ranked.at(-1)?.quantity.value ?? 0);
  if (at === 0 || at === ranked.length - 1)
    return `${own.is} is ${(at === 0) === descends ? 'largest' : 'smallest'} of ${list}.${address}`;
  const side = (members: readonly Candidate[], sign: '<' | '>') =>
    members.length === 1
      ? `${members[0]!.is} ${sign} ${own.is}`
      : `all [${members.map(({ alias }) => alias).join(' ')}].${address} ${sign} ${own.is}`;
  const [above, below] = descends ? (['>', '<'] as const) : (['<', '>'] as const);
  return `${side(ranked.slice(0, at), above)} and ${side(ranked.slice(at + 1), below)}`;
}

function holds(condition: string, { subjects }: Bearing): boolean {
  const tree = parseCondition(condition);
  const judged = isTextProblem(tree) ? tree : judge(tree, subjects);
  return 'verdict' in judged && judged.verdict === 'holds';
}

function shownOf(ranked: readonly Candidate[]): string {
  return ranked.map(({ alias }) => alias).join(', ');
}
