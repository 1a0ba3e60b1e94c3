/** All that a number could mean, whether or not the words hold for it: figures and facts, differences and ratios of two, counts. */
import { definitionOf } from '../../figures/catalogue.ts';
import { evaluate } from '../../words/expression/expression.ts';
import type { Stated } from '../../words/stated/read.ts';
import type { Asked } from './asked.ts';
import type { Bearing } from './bearing.ts';
import { type Candidate, type Pair, pairsOf } from './candidates.ts';
import type { ContextWord } from './context.ts';
import { countsOf } from './counts.ts';
import { contextScore } from './rank.ts';

/** Expressions of ours have no place in a file. */
export const NOWHERE = { file: '', line: 1, column: 1 };

export interface Proposal {
  readonly is: string;
  readonly unit: string;
  /** Bare value: a first look, before units and uncertainties are worked out. */
  readonly value: number;
  readonly score: () => number;
  readonly title: () => string;
}

/** Single figures, settings, conditions and ratings, with what differs from one for shares; or pairs of them and counts. */
export function proposalsOf(asked: Asked, bearing: Bearing, paired: boolean): Proposal[] {
  const { said, context } = asked;
  if (paired) return [...pairs(said, context, bearing)];
  const counted = said.unit === '1' ? countProposals(asked, bearing) : [];
  return [...counted, ...bearing.candidates.flatMap((candidate) => singles(candidate, said, context, bearing))];
}

function singles(candidate: Candidate, said: Stated, context: readonly ContextWord[], { words }: Bearing): Proposal[] {
  const { unit, value } = candidate.quantity;
  const score = () => contextScore(candidate, context, words);
  const title = () => titleOf(candidate);
  const plain: Proposal = { is: candidate.is, unit, value, score, title };
  const { comparison } = said.said;
  const gained = unit === '1' && candidate.subject.kind === 'comparison' && comparison && !comparison.ofRatio;
  // "Five degrees past the limit" is a margin below zero.
  if (value < 0) return [plain, { ...plain, is: `-${candidate.is}`, value: -value }];
  if (!gained) return [plain];
  const [is, left] = comparison.kind === 'less' ? [`1 - ${candidate.is}`, 1 - value] : [`${candidate.is} - 1`, value - 1];
  return [plain, { is, unit, value: left, score, title: () => `${title()}, its difference from 1` }];
}

function countProposals({ words, context }: Asked, bearing: Bearing): Proposal[] {
  return countsOf(words, context, bearing).flatMap(({ is, title, score }) => {
    const evaluated = evaluate(is, bearing.subjects, NOWHERE);
    if ('problems' in evaluated) return [];
    return [{ is, unit: '1', value: evaluated.quantity.value, score: () => COUNTED + score, title: () => title }];
  });
}

/** A count of what the words name is meant before all else. */
const COUNTED = 5;

function pairs(said: Stated, context: readonly ContextWord[], { candidates, words }: Bearing): Proposal[] {
  const scores = new Map(candidates.map((candidate) => [candidate, contextScore(candidate, context, words)]));
  const all = [...pairsOf(candidates, '-'), ...(said.unit === '1' ? pairsOf(candidates, '/') : [])];
  return all.map((pair) => {
    const { left, right, operator, is } = pair;
    const value = differenceOrRatio(pair);
    const score = () => ((scores.get(left) ?? 0) + (scores.get(right) ?? 0)) / 2 + (value < 0 ? BACKWARDS : 0);
    const title = () => `${titleOf(left)} ${operator === '/' ? 'over' : 'less'} ${titleOf(right)}`;
    return { is, unit: unitOf(pair), value, score, title };
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
