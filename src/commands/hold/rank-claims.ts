/** Claims that would hold a rank: "the second fastest of the four" as a condition about a group of runs. */
import { listed } from '../../figures/in-words.ts';
import { compareText } from '../../problem.ts';
import { judge } from '../../words/expression/condition.ts';
import { isTextProblem, parseCondition } from '../../words/expression/parse-expression.ts';
import { COUNT } from '../../words/rules/count-words.ts';
import { wayOf } from '../../words/stated/comparison-words.ts';
import { isUnread, readStated } from '../../words/stated/read.ts';
import type { Bearing } from './bearing.ts';
import type { Candidate } from './candidates.ts';
import type { ContextWord } from './context.ts';
import { groupsOf } from './counts.ts';
import type { Offer } from './offers.ts';
import { contextScore, wordsAlone } from './rank.ts';
import { rankedAddresses } from './rank-quantity.ts';

const PLACES = 'first second third fourth fifth sixth seventh eighth ninth tenth'.split(' ');
const MOST = 3;

/** What can hold a rank, or why nothing does. */
export interface RankClaims {
  readonly offers: readonly Offer[];
  readonly why?: string;
}

/**
 * Conditions about the quantity that the sentence names, which the data decides as the words say, the likeliest first. Where its own condition
 * fails there is none: another quantity in the same order is not what the sentence says.
 */
export function rankClaims(words: string, context: readonly ContextWord[], bearing: Bearing): RankClaims {
  const all = [...context, ...wordsAlone(words)];
  const low = words.toLowerCase();
  const own = context.filter((word) => word.own === true);
  const addresses = rankedAddresses(words, context, bearing.candidates, bearing.words);
  const ofSame = Map.groupBy(
    bearing.candidates.filter(({ fact, subject }) => !fact && subject.kind === 'run'),
    ({ alias, is }) => is.slice(alias.length + 1),
  );
  const count = countSaid(low, context);
  const asked = groupsOf(all, bearing.subjects, bearing.words).flatMap(({ list, aliases, title, score: ofGroup }) =>
    [...addresses].flatMap((address): Asked[] => {
      const group = (ofSame.get(address) ?? []).filter(({ alias }) => aliases.includes(alias));
      if (group.length < aliases.length || group.length < 3 || group.length !== (count ?? group.length)) return [];
      const ranked = inOrder(group, low);
      return [{ ranked, list, address, title, ofGroup, named: ranked.filter((each) => isNamed(each, own, bearing, aliases)) }];
    }),
  );
  const offers = asked
    .flatMap(({ ranked, list, address, title, ofGroup, named }) => {
      const at = placeOf(low, ranked.length) - 1;
      const meant = ranked[at];
      if (!meant || !named.includes(meant)) return [];
      const is = conditionOf(ranked, at, { list, address });
      const score = contextScore(meant, all, bearing.words) + ofGroup;
      return [{ is, shown: shownOf(ranked), title: `${title}, by ${address}`, narrow: false, claim: true as const, score }];
    })
    .filter(({ is }) => holds(is, bearing))
    .sort((a, b) => b.score - a.score || compareText(a.is, b.is))
    .slice(0, MOST)
    .map(({ score: _, ...offer }) => offer);
  const why = offers.length > 0 || addresses.size === 0 ? undefined : (trueRank(asked, bearing) ?? noGroup(count));
  return { offers, ...(why === undefined ? {} : { why }) };
}

interface Asked {
  /** The first of the rank first. */
  readonly ranked: readonly Candidate[];
  readonly list: string;
  readonly address: string;
  readonly title: string;
  readonly ofGroup: number;
  /** Those that the sentence names; all of them where it names none. */
  readonly named: readonly Candidate[];
}

/** The order that the words ask for: most first, or least. */
function inOrder(group: readonly Candidate[], low: string): Candidate[] {
  const ranked = group.toSorted((a, b) => b.quantity.value - a.quantity.value);
  const isTime = group[0]!.quantity.unit === 's';
  const earlyFirst = isTime && /\b(?:fast|quick|slow|best|worst)|rank|came|come|place/.test(low);
  return isLess(low) === earlyFirst ? ranked : ranked.reverse();
}

/** Where the run that the sentence names stands in truth, as far as the data can tell. */
function trueRank(asked: readonly Asked[], bearing: Bearing): string | undefined {
  const [first] = asked;
  if (!first) return undefined;
  const { ranked, list, address, named } = first;
  const order = `by ${address} the order is ${listed(ranked.map(({ alias }) => alias))}`;
  const [only, ...others] = named;
  if (!only || others.length > 0) return order;
  const at = ranked.indexOf(only);
  const place = PLACES[at];
  return place !== undefined && holds(conditionOf(ranked, at, { list, address }), bearing)
    ? `${order}: ${only.alias} is ${place}`
    : `${order}, and the data does not decide the place of ${only.alias}`;
}

function noGroup(count: number | undefined): string {
  return `the note has no group of ${count ?? 'three or more'} runs that all have the quantity: correct the number, or add a run`;
}

/** How many things the sentence says are ranked: "hottest of the three", "second fastest run of four". */
function countSaid(low: string, context: readonly ContextWord[]): number | undefined {
  const behind = context.filter((each) => each.behind !== undefined).toSorted((a, b) => a.behind! - b.behind!);
  const text = [low, ...behind.slice(0, NEAR).map(({ word }) => word)].join(' ');
  const count = OF_SO_MANY.exec(text)?.[1];
  const read = count === undefined ? undefined : readStated(count);
  return read === undefined || isUnread(read) ? undefined : read.nominal;
}

/** How many words behind a rank still say of how many it is. */
const NEAR = 6;
const OF_SO_MANY = new RegExp(String.raw`\bof\s+(?:(?:all|the|our|these|those)\s+)*(${COUNT})\b`, 'u');

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
