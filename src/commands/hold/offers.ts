/** What fits an unheld number, best first. */
import { printQuantity } from '../../quantities/print.ts';
import { sensed } from '../../words/directives/direction.ts';
import { turnedRound } from '../../words/directives/sentence-order.ts';
import { verdictOf } from '../../words/directives/stated-verdict.ts';
import { evaluate } from '../../words/expression/expression.ts';
import { holds } from '../../words/stated/holds.ts';
import { beginsWithUnit } from '../../words/stated/own-word.ts';
import { isUnread, type Stated } from '../../words/stated/read.ts';
import { type Asked, compares, isOwnWord } from './asked.ts';
import type { Bearing } from './bearing.ts';
import { NOWHERE, type Proposal, proposalsOf } from './proposals.ts';
import { closeness } from './rank.ts';

export interface Offer {
  /** The expression that would hold the number. */
  readonly is: string;
  /** Its value as it prints. */
  readonly shown: string;
  /** In words: "peak temperature, Fast setting, hour soak". */
  readonly title: string;
  /** True where the number is true of it, but within its uncertainty of being false. */
  readonly narrow: boolean;
  /** The unit of a score that is said without it. */
  readonly unit?: string;
  /** Where it is a condition, which holds the words as a claim. */
  readonly claim?: true;
}

interface Scored extends Offer {
  readonly score: number;
  /** The part of it that the words around the number give. */
  readonly byWords: number;
  /** The unit of the figure itself. */
  readonly of: string;
}

/** More than these nobody reads. */
const MOST = 9;
const NARROW = -0.4;
/** What scores as much less than the first offer is there by chance. */
const UNLIKELY = 4;

/**
 * The figures, settings, conditions and ratings that bear the words; where there are none, or where the words compare ("13.5 kelvin
 * hotter"), differences and ratios of two of them; and counts of what the words name.
 */
export function offersFor(asked: Asked, bearing: Bearing): Offer[] {
  return scoredOffers(asked, bearing)
    .slice(0, MOST)
    .map(({ score: _, byWords: __, of: ___, ...offer }) => offer);
}

/** Whether nobody would ask what is meant: the words around the number name the first offer, and far better than any other that fits. */
export function isSure(asked: Asked, bearing: Bearing): boolean {
  const [first, second] = scoredOffers(asked, bearing);
  if (first === undefined || first.narrow) return false;
  return second === undefined ? first.byWords >= NAMED : first.byWords >= NAMED_AMONG && first.score - second.score >= CLEAR;
}

/** What a run's name gives, or a word of the figure and how ready people are to mean it: enough where nothing else fits. */
const NAMED = 2.8;
/** What a run and one word of its figure give together. */
const NAMED_AMONG = 3.9;
/** What one word of a figure gives. */
const CLEAR = 2;

/** All of them, the best first. */
export function scoredOffers(asked: Asked, bearing: Bearing): Scored[] {
  const single = proposalsOf(asked, bearing, false).flatMap((proposal) => offerOf(asked, proposal, bearing));
  const more = single.length === 0 || compares(asked) ? proposalsOf(asked, bearing, true) : [];
  const found = [...single, ...more.flatMap((proposal) => offerOf(asked, proposal, bearing))];
  const sorted = withoutTwins(found.sort((a, b) => b.score - a.score));
  return sorted.filter(({ score }) => score > (sorted[0]?.score ?? 0) - UNLIKELY);
}

/** The offer, where the words hold for it. */
function offerOf(
  { inUnitOf, said: alone, borrowed, sentence }: Asked,
  { is, unit, value, step, score, title }: Proposal,
  { subjects }: Bearing,
): Scored[] {
  const read = inUnitOf(unit);
  if (isUnread(read) || isFarFrom(read, value, step)) return [];
  const said = sensed(read, is, subjects);
  const evaluated = evaluate(is, subjects, NOWHERE);
  if ('problems' in evaluated) return [];
  const verdict = verdictOf(said, evaluated);
  if (verdict === 'fails') return [];
  if (turnedRound(said, sentence, is, evaluated.quantity.value, subjects) !== undefined) return [];
  const narrow = verdict === 'holds narrowly';
  const byWords = score();
  const full = byWords + closeness(said, evaluated.quantity.value) + (narrow ? NARROW : 0);
  const own = alone.unit === '1' && borrowed === undefined && isOwnWord(unit) && !hasWord(alone, unit) ? { unit } : {};
  return [{ is, ...own, shown: printQuantity(evaluated.quantity).text, title: title(), narrow, score: full, byWords, of: unit }];
}

/** Whether the score's unit stands behind the number. */
function hasWord({ said: { text, sides } }: Stated, unit: string): boolean {
  return beginsWithUnit(text.slice(sides.at(-1)!.end), unit);
}

/** A first look, before units and uncertainties are worked out: what the page prints may differ a little from the value. */
function isFarFrom(said: Stated, value: number, step: number): boolean {
  const off = Math.abs((said.bySize ? Math.abs(value) : value) - said.nominal);
  return holds(said, value, null) === 'fails' && off > Math.max(Math.abs(said.nominal) / 50, step);
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
