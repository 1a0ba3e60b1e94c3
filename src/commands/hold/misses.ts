/** What the words around a number mean, where it just misses the words of the number. */
import { printQuantity } from '../../quantities/print.ts';
import { allowedWords, unrounded } from '../../words/directives/stated-report.ts';
import { verdictOf, wordingFor } from '../../words/directives/stated-verdict.ts';
import { evaluate } from '../../words/expression/expression.ts';
import { holds } from '../../words/stated/holds.ts';
import { isUnread, type Stated } from '../../words/stated/read.ts';
import type { Asked } from './asked.ts';
import type { Bearing } from './bearing.ts';
import { type Offer, scoredOffers } from './offers.ts';
import { NOWHERE, type Proposal, proposalsOf } from './proposals.ts';

/**
 * What the words around a number mean and its own words miss, the likeliest first. Near misses come before all others. What lies further
 * off is shown where the sentence names it at least as well as what fits: "the rated run drew 7.3 W" fits the brisk run alone, and its
 * author has to see what the rated run drew. So a figure that fits by chance never stands alone.
 */
export function missesFor(asked: Asked, bearing: Bearing): Miss[] {
  const offers = scoredOffers(asked, bearing);
  const [best, only] = [offers[0], offers.length === 1];
  const proposals = [
    ...proposalsOf(asked, bearing, false),
    ...(asked.said.said.comparison || offers.length === 0 ? proposalsOf(asked, bearing, true) : []),
  ];
  const misses = proposals.flatMap((proposal) => {
    const read = asked.inUnitOf(proposal.unit);
    if (isUnread(read) || holds(read, proposal.value, null) !== 'fails') return [];
    const off = Math.abs((read.bySize ? Math.abs(proposal.value) : proposal.value) - read.nominal);
    const width = Number.isFinite(read.upper - read.lower) ? read.upper - read.lower : 0;
    const scale = read.difference || read.unit !== '°C' ? sizeOf(read) / 10 : DEGREES;
    const far = off / Math.max(width, scale);
    const byWords = proposal.score();
    const score = byWords - distance(far);
    const isLikely = best === undefined || score > best.score - (only ? MISSED : 0) || (only && byWords >= best.byWords);
    const isMeant = proposal.isNamed() || (only && isOfOtherRun(proposal, best!));
    const mayLieFar =
      isMeant && (best === undefined ? proposal.unit !== '1' || asked.counted !== undefined : best.of === proposal.unit);
    return isLikely && (far <= 1 || mayLieFar) ? [{ proposal, read, score }] : [];
  });
  return misses
    .sort((a, b) => b.score - a.score)
    .slice(0, 2 * MISSES)
    .flatMap(({ proposal, read }) => missOf(proposal, read, bearing, asked))
    .filter((miss, index, all) => all.findIndex((other) => isOfOtherRun(miss, other) && miss.shown === other.shown) === index)
    .slice(0, MISSES);
}

/** Up to 1 for a near miss, towards 2 for one that lies far off. */
function distance(off: number): number {
  return off <= 1 ? off : 2 - 1 / off;
}

/** The same figure or fact of another run. */
function isOfOtherRun(a: { readonly is: string }, b: { readonly is: string }): boolean {
  return addressOf(a.is) === addressOf(b.is);
}

/** What follows the alias. */
function addressOf(is: string): string {
  return is.slice(is.indexOf('.') + 1);
}

/** The number that was said: of "three percent more" the three percent. */
function sizeOf({ nominal, said: { comparison } }: Stated): number {
  return Math.abs(comparison?.ofRatio ? 2 * (nominal - 1) : nominal);
}

/** How far off a temperature still is a near miss, °C. */
const DEGREES = 5;
/** How much less likely than a sole offer a near miss may be; beside several it must be likelier. */
const MISSED = 0.8;
const MISSES = 2;

/** A figure that the words nearly say. */
export interface Miss extends Omit<Offer, 'narrow'> {
  /** Why it does not hold them. */
  readonly why: string;
  /** The author's words with the number that it would hold, where they can be written so. */
  readonly instead?: string;
}

function missOf({ is, title }: Proposal, read: Stated, { subjects }: Bearing, { borrowed, words }: Asked): Miss[] {
  const evaluated = evaluate(is, subjects, NOWHERE);
  if ('problems' in evaluated || verdictOf(read, evaluated) !== 'fails') return [];
  const { quantity } = evaluated;
  const at = read.bySize ? Math.abs(quantity.value) : quantity.value;
  const side = at <= read.lower ? 'less than' : 'more than';
  const whole = read.said.text === words ? wordingFor(read, evaluated) : undefined;
  const instead = borrowed !== undefined && whole?.endsWith(` ${borrowed}`) ? whole.slice(0, -borrowed.length - 1) : whole;
  const allowed = allowedWords(read, quantity.unit);
  const { text, unit } = printQuantity(quantity);
  const more = unrounded(read, quantity, unit);
  const shown = more === '' ? text : `${text} (${more})`;
  return [{ is, shown, title: title(), why: `${side} the words allow: ${allowed}`, ...(instead === undefined ? {} : { instead }) }];
}
