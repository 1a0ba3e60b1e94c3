/** What the words around a number mean, where it just misses the words of the number. */
import { printQuantity } from '../../quantities/print.ts';
import { allowedWords, unrounded } from '../../words/directives/stated-report.ts';
import { verdictOf, wordingFor } from '../../words/directives/stated-verdict.ts';
import { evaluate } from '../../words/expression/expression.ts';
import { holds } from '../../words/stated/holds.ts';
import { isUnread, type Stated } from '../../words/stated/read.ts';
import type { Asked } from './asked.ts';
import type { Bearing } from './bearing.ts';
import { isCommon, isNamed } from './named.ts';
import { type Offer, scoredOffers } from './offers.ts';
import { NOWHERE, type Proposal, proposalsOf, titleOf } from './proposals.ts';
import { contextScore } from './rank.ts';

/** What comes near to the words and misses them, the likeliest first: within a tenth of the number, or twice as far as the words allow. */
export function missesFor(asked: Asked, bearing: Bearing): Miss[] {
  const offers = scoredOffers(asked, bearing);
  const best = offers[0]?.score ?? Number.NEGATIVE_INFINITY;
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
    const reach = Math.max(width, scale);
    return off <= reach ? [{ proposal, read, score: proposal.score() - off / reach }] : [];
  });
  const likely = misses.filter(({ score }) => score > best - (offers.length === 1 ? MISSED : 0)).sort((a, b) => b.score - a.score);
  const found = likely.length > 0 || best > Number.NEGATIVE_INFINITY ? likely : nearest(asked, bearing);
  return found
    .slice(0, 2 * MISSES)
    .flatMap(({ proposal, read }) => missOf(proposal, read, bearing, asked.borrowed))
    .slice(0, MISSES);
}

/** Where nothing comes near: the nearest single figures, settings, conditions and ratings that the words name; of equally near ones those meant. */
function nearest(asked: Asked, bearing: Bearing): { readonly proposal: Proposal; readonly read: Stated }[] {
  const near = bearing.candidates.flatMap((candidate) => {
    const { unit, value } = candidate.quantity;
    const read = asked.inUnitOf(unit);
    if (isUnread(read) || !(isNamed(candidate.name, asked.context) || isCommon(candidate.name))) return [];
    if (asked.counted !== undefined) return [];
    const score = () => contextScore(candidate, asked.context, bearing.words);
    const proposal = { is: candidate.is, unit, value, step: 0, score, title: () => titleOf(candidate) };
    const distance = Math.abs((read.bySize ? Math.abs(value) : value) - read.nominal);
    return distance > Math.abs(read.nominal) / 3 ? [] : [{ proposal, read, distance }];
  });
  return near.sort((a, b) => a.distance - b.distance || b.proposal.score() - a.proposal.score());
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

function missOf({ is, title }: Proposal, read: Stated, { subjects }: Bearing, borrowed: string | undefined): Miss[] {
  const evaluated = evaluate(is, subjects, NOWHERE);
  if ('problems' in evaluated || verdictOf(read, evaluated) !== 'fails') return [];
  const { quantity } = evaluated;
  const at = read.bySize ? Math.abs(quantity.value) : quantity.value;
  const side = at <= read.lower ? 'less than' : 'more than';
  const whole = wordingFor(read, evaluated);
  const instead = borrowed !== undefined && whole?.endsWith(` ${borrowed}`) ? whole.slice(0, -borrowed.length - 1) : whole;
  const allowed = allowedWords(read, quantity.unit);
  const { text, unit } = printQuantity(quantity);
  const more = unrounded(read, quantity, unit);
  const shown = more === '' ? text : `${text} (${more})`;
  return [{ is, shown, title: title(), why: `${side} the words allow: ${allowed}`, ...(instead === undefined ? {} : { instead }) }];
}
