/** What fits an unheld number, best first. */
import { definitionOf } from '../../figures/catalogue.ts';
import { printQuantity } from '../../quantities/print.ts';
import { verdictOf } from '../../words/directives/stated.ts';
import { evaluate } from '../../words/expression/expression.ts';
import { holds } from '../../words/stated/holds.ts';
import { inUnit, isUnread, type Stated, type Unread } from '../../words/stated/read.ts';
import { unread } from '../../words/stated/stated-number.ts';
import type { Subject } from '../../words/written.ts';
import { type Candidate, candidatesOf, type Pair, pairsOf } from './candidates.ts';
import type { ContextWord } from './context.ts';
import { type AliasWords, closeness, contextScore, saysDifference, wordsAlone } from './rank.ts';

export interface Offer {
  /** The expression that would hold the number. */
  readonly is: string;
  /** Its value as it prints. */
  readonly shown: string;
  /** In words: "peak temperature, Fast setting, hour soak". */
  readonly title: string;
  /** True where the number is true of it, but within its uncertainty of being false. */
  readonly narrow: boolean;
}

interface Scored extends Offer {
  readonly score: number;
}

/** More than these nobody reads. */
const MOST = 9;
const NARROW = -0.4;
const PLACE = { file: '', line: 1, column: 1 };

export interface Bearing {
  readonly subjects: ReadonlyMap<string, Subject>;
  readonly candidates: readonly Candidate[];
  readonly aliases: AliasWords;
}

/** A rating is one and the same for all runs of a device: the best alias is enough. */
function withoutTwins(offers: readonly Scored[]): Scored[] {
  const seen = new Set<string>();
  return offers.filter(({ is, shown }) => {
    const rating = /^[^ ]+?\.(device\.[^ ]+)$/.exec(is)?.[1];
    if (rating === undefined) return true;
    const twin = seen.has(`${rating} ${shown}`);
    seen.add(`${rating} ${shown}`);
    return !twin;
  });
}

/** What a note's numbers may rest on, prepared once. */
export function bearingOf(subjects: ReadonlyMap<string, Subject>): Bearing {
  return { subjects, candidates: candidatesOf(subjects), aliases: aliasWords(subjects) };
}

/**
 * The figures, settings, conditions and ratings that bear the words; where there are none, or where the words compare ("13.5 kelvin
 * hotter"), differences and ratios of two of them.
 */
export function offersFor({ said, context, inUnitOf }: Asked, bearing: Bearing): Offer[] {
  const single = bearing.candidates.flatMap((candidate) => {
    const { unit, value } = candidate.quantity;
    const score = () => contextScore(candidate, context, bearing.aliases);
    return offerOf(inUnitOf(unit), { is: candidate.is, value, score, title: () => titleOf(candidate) }, bearing);
  });
  const pairs = single.length === 0 || said.said.comparison ? pairOffers(said, inUnitOf, context, bearing) : [];
  const found = [...single, ...pairs];
  const sorted = found.sort((a, b) => b.score - a.score);
  return withoutTwins(sorted)
    .slice(0, MOST)
    .map(({ score: _, ...offer }) => offer);
}

type InUnitOf = (unit: string) => Stated | Unread;

/** A number that is to be held, as its words and those around it say it. */
export interface Asked {
  readonly said: Stated;
  /** The words around it, and its own: "more" of "0.9 W more" tells what is meant. */
  readonly context: readonly ContextWord[];
  /** What the words say in the unit of a figure. */
  readonly inUnitOf: InUnitOf;
}

/** Prepares the search for a number. A plain temperature is no difference unless words beside it say so. */
export function askedBy(said: Stated, words: string, context: readonly ContextWord[]): Asked {
  const all = [...context, ...wordsAlone(words)];
  const plain = said.unit === '°C' && !said.difference && !saysDifference(all);
  const inUnitOf = remembered((unit: string) =>
    plain && unit === 'K' ? unread('a temperature', said.start, 'a difference') : inUnit(said, unit),
  );
  return { said, context: all, inUnitOf };
}

function remembered<T>(make: (unit: string) => T): (unit: string) => T {
  const known = new Map<string, T>();
  return (unit) => {
    const made = known.get(unit) ?? make(unit);
    known.set(unit, made);
    return made;
  };
}

interface Proposal {
  readonly is: string;
  /** Bare value: a first look, before units and uncertainties are worked out. */
  readonly value: number;
  readonly score: () => number;
  readonly title: () => string;
}

/** The offer, where the words hold for it. `said` is in its unit. */
function offerOf(said: Stated | Unread, { is, value, score, title }: Proposal, { subjects }: Bearing): Scored[] {
  if (isUnread(said) || holds(said, value, null) === 'fails') return [];
  const evaluated = evaluate(is, subjects, PLACE);
  if ('problems' in evaluated) return [];
  const verdict = verdictOf(said, evaluated);
  if (verdict === 'fails') return [];
  const narrow = verdict === 'holds narrowly';
  const full = score() + closeness(said, evaluated.quantity.value) + (narrow ? NARROW : 0);
  return [{ is, shown: printQuantity(evaluated.quantity).text, title: title(), narrow, score: full }];
}

function pairOffers(said: Stated, inUnitOf: InUnitOf, context: readonly ContextWord[], bearing: Bearing): Scored[] {
  const scores = new Map(bearing.candidates.map((candidate) => [candidate, contextScore(candidate, context, bearing.aliases)]));
  const pairs = [...pairsOf(bearing.candidates, '-'), ...(said.unit === '1' ? pairsOf(bearing.candidates, '/') : [])];
  return pairs.flatMap((pair) => {
    const { left, right, operator, is } = pair;
    const value = differenceOrRatio(pair);
    const score = () => ((scores.get(left) ?? 0) + (scores.get(right) ?? 0)) / 2 + (value < 0 ? BACKWARDS : 0);
    const title = () => `${titleOf(left)} ${operator === '/' ? 'over' : 'less'} ${titleOf(right)}`;
    return offerOf(inUnitOf(unitOf(pair)), { is, value, score, title }, bearing);
  });
}

/** "6 degrees cooler" fits both ways round; people put the larger first. */
const BACKWARDS = -1;

function unitOf({ left, operator }: Pair): string {
  if (operator === '/') return '1';
  return left.quantity.unit === '°C' ? 'K' : left.quantity.unit;
}

function differenceOrRatio({ left, right, operator }: Pair): number {
  return operator === '/' ? left.quantity.value / right.quantity.value : left.quantity.value - right.quantity.value;
}

/** In words: what, of which run. */
export function titleOf({ name, details, subject, fact }: Candidate): string {
  const label = fact
    ? name.replace('device.', '').replace('setting.', 'set ').replaceAll(/[._]/g, ' ')
    : (definitionOf(name)?.label ?? name);
  return `${[label, ...details].join(', ')} (${subject.title})`;
}

/** The alias, its parts, and words of its title that it alone has. */
function aliasWords(subjects: ReadonlyMap<string, Subject>): AliasWords {
  const titles = [...subjects].map(([alias, { title }]) => [alias, wordsOf(title)] as const);
  return new Map(
    titles.map(([alias, words]) => {
      const others = titles.filter(([other]) => other !== alias).flatMap(([, each]) => each);
      return [alias, [...new Set([alias.toLowerCase(), ...wordsOf(alias), ...words.filter((word) => !others.includes(word))])]];
    }),
  );
}

function wordsOf(text: string): string[] {
  return text
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((word) => word.length > 3);
}
