/** All that a number could mean, whether or not the words hold for it: figures and facts, differences and ratios of two, counts. */
import { definitionOf } from '../../figures/catalogue.ts';
import { evaluate } from '../../words/expression/expression.ts';
import type { Asked } from './asked.ts';
import type { Bearing } from './bearing.ts';
import type { Candidate } from './candidates.ts';
import { countsOf } from './counts.ts';
import { isMeant, isNamed, unitSaid } from './named.ts';
import { isSpokenOf, type Pair } from './pairs.ts';
import { contextScore, saysDifference } from './rank.ts';
import { sharedOf } from './shared.ts';

/** Expressions of ours have no place in a file. */
export const NOWHERE = { file: '', line: 1, column: 1 };

export interface Proposal {
  readonly is: string;
  readonly unit: string;
  /** Bare value: a first look, before units and uncertainties are worked out. */
  readonly value: number;
  /** What is printed may lie so far from it. */
  readonly step: number;
  readonly score: () => number;
  readonly title: () => string;
  /** Whether the sentence speaks of it, whoever ran it; a run that it names is not enough. */
  readonly isNamed: () => boolean;
}

/** Single figures, settings, conditions and ratings, with what differs from one for shares; or pairs of them. A count is held by counts alone. */
export function proposalsOf(asked: Asked, bearing: Bearing, paired: boolean): Proposal[] {
  if (asked.counted !== undefined) return paired ? [] : countProposals(asked, bearing);
  if (paired) return pairs(asked, bearing);
  const shared = evaluated(sharedOf(asked, bearing), bearing);
  return [...shared, ...bearing.candidates.flatMap((candidate) => singles(candidate, asked, bearing))];
}

function singles(candidate: Candidate, asked: Asked, { words }: Bearing): Proposal[] {
  const { unit, value } = candidate.quantity;
  if (!isMeant(candidate, asked.context)) return [];
  const score = () => contextScore(candidate, asked.context, words);
  const title = () => titleOf(candidate);
  const named = () => isNamed(candidate.name, asked.context);
  const plain: Proposal = { is: candidate.is, unit, value, step: candidate.quantity.step ?? 0, score, title, isNamed: named };
  // "Five degrees past the limit" is a margin below zero.
  if (value < 0) return [plain, { ...plain, is: `-${candidate.is}`, value: -value }];
  return unit === '1' ? ofRatio(plain, asked) : [plain];
}

/** A ratio as the words mean it: itself, or by how much it differs from one ("a gain of 24 percent", "7 percent less"). */
function ofRatio(ratio: Proposal, { said, context }: Asked): Proposal[] {
  const { comparison, sides } = said.said;
  const [side] = sides;
  const share = side.unit?.kind === 'percent' || (!side.unit && side.amount.part !== undefined);
  if (!share || comparison?.ofRatio) return [ratio];
  const ofWhole = context.some(({ word, behind }) => word === 'of' && behind === 1);
  const compares = comparison !== undefined || (saysDifference(context) && !ofWhole);
  if (!compares) return [ratio];
  const { is, value, title } = ratio;
  const more = value >= 1;
  const allowed = comparison === undefined || comparison.kind === 'apart' || comparison.kind === (more ? 'more' : 'less');
  const derived: Proposal = {
    ...ratio,
    is: more ? `${is} - 1` : `1 - ${is}`,
    value: Math.abs(value - 1),
    title: () => `${title()}, its difference from 1`,
  };
  return [...(comparison === undefined ? [ratio] : []), ...(allowed ? [derived] : [])];
}

function countProposals(asked: Asked, bearing: Bearing): Proposal[] {
  return evaluated(countsOf(asked.counted ?? '', asked.context, bearing), bearing).map((each) => ({
    ...each,
    score: () => COUNTED + each.score(),
  }));
}

function evaluated(
  all: readonly { readonly is: string; readonly title: string; readonly score: number }[],
  { subjects }: Bearing,
): Proposal[] {
  return all.flatMap(({ is, title, score }) => {
    const outcome = evaluate(is, subjects, NOWHERE);
    if ('problems' in outcome) return [];
    const { unit, value } = outcome.quantity;
    return [{ is, unit, value, step: 0, score: () => score, title: () => title, isNamed: () => true }];
  });
}

/** A count of what the words name is meant before all else. */
const COUNTED = 5;

function pairs(asked: Asked, { differences, ratios, words }: Bearing): Proposal[] {
  const { said, context } = asked;
  const scores = new Map<Candidate, number>();
  const scored = (candidate: Candidate): number => {
    const score = scores.get(candidate) ?? contextScore(candidate, context, words);
    scores.set(candidate, score);
    return score;
  };
  const spoken = new Map<string, boolean>();
  const isSpoken = (pair: Pair): boolean => {
    const { left, right, operator } = pair;
    const key = [left.name, ...left.details, operator, right.name, ...right.details, left.alias === right.alias].join(' ');
    const known = spoken.get(key) ?? isSpokenOf(pair, context, words);
    spoken.set(key, known);
    return known;
  };
  const fitting = said.unit === '1' ? [...differences, ...ratios] : differences;
  return fitting.filter(isSpoken).flatMap((pair) => {
    const { left, right, operator, is } = pair;
    const value = differenceOrRatio(pair);
    const ofUnit = operator === '/' ? unitSaid(left.quantity.unit, context) : 0;
    const score = () => (scored(left) + scored(right)) / 2 + ofUnit + (value < 0 ? BACKWARDS : 0);
    const title = () => `${titleOf(left)} ${operator === '/' ? 'over' : 'less'} ${titleOf(right)}`;
    const step = operator === '/' ? 0 : Math.max(left.quantity.step ?? 0, right.quantity.step ?? 0);
    const proposal = { is, unit: unitOf(pair), value, step, score, title, isNamed: () => true };
    return operator === '/' ? ofRatio(proposal, asked) : [proposal];
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
function titleOf({ name, details, subject, fact }: Candidate): string {
  const label = fact
    ? name.replace('device.', '').replace('setting.', 'set ').replaceAll(/[._]/g, ' ')
    : (definitionOf(name)?.label ?? name);
  return `${[label, ...details].join(', ')} (${subject.title})`;
}
