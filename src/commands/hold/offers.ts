/** What fits an unheld number, best first. */
import { definitionOf } from '../../figures/catalogue.ts';
import { printQuantity } from '../../quantities/print.ts';
import type { Evaluated } from '../../words/evaluate.ts';
import { evaluate } from '../../words/expression.ts';
import { inUnit, isUnread, type Stated } from '../../words/stated/read.ts';
import { verdictOf } from '../../words/stated.ts';
import type { Subject } from '../../words/written.ts';
import { type Candidate, candidatesOf, type Pair, pairsOf } from './candidates.ts';
import type { ContextWord } from './context.ts';
import { type AliasWords, closeness, contextScore } from './rank.ts';

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

/** What a note's numbers may rest on, prepared once. */
export function bearingOf(subjects: ReadonlyMap<string, Subject>): Bearing {
  return { subjects, candidates: candidatesOf(subjects), aliases: aliasWords(subjects) };
}

/** The figures, settings, conditions and ratings that bear the words; where there are none, differences and ratios of two of them. */
export function offersFor(said: Stated, context: readonly ContextWord[], bearing: Bearing): Offer[] {
  const single = bearing.candidates.flatMap((candidate) =>
    offerOf(
      said,
      candidate.is,
      candidate.quantity.unit,
      bearing,
      () => singleScore(candidate, context, bearing),
      () => titleOf(candidate),
    ),
  );
  const found = single.length > 0 ? single : pairOffers(said, context, bearing);
  const sorted = found.sort((a, b) => b.score - a.score || (a.is < b.is ? -1 : 1));
  return sorted.slice(0, MOST).map(({ score: _, ...offer }) => offer);
}

function singleScore(candidate: Candidate, context: readonly ContextWord[], { aliases }: Bearing): number {
  return contextScore(candidate, context, aliases);
}

function offerOf(
  said: Stated,
  is: string,
  unit: string,
  { subjects }: Bearing,
  score: () => number,
  title: () => string,
): Scored[] {
  const fitting = inUnit(said, unit);
  if (isUnread(fitting)) return [];
  const evaluated = evaluate(is, subjects, PLACE);
  if ('problems' in evaluated) return [];
  const verdict = verdictOf(fitting, evaluated as Evaluated);
  if (verdict === 'fails') return [];
  const narrow = verdict === 'holds narrowly';
  const { quantity } = evaluated;
  return [
    {
      is,
      shown: printQuantity(quantity).text,
      title: title(),
      narrow,
      score: score() + closeness(fitting, quantity.value) + (narrow ? NARROW : 0),
    },
  ];
}

function pairOffers(said: Stated, context: readonly ContextWord[], bearing: Bearing): Scored[] {
  const pairs = [...pairsOf(bearing.candidates, '-'), ...(said.unit === '1' ? pairsOf(bearing.candidates, '/') : [])];
  return pairs
    .filter((pair) => mayFit(said, pair))
    .flatMap((pair) => {
      const { left, right, operator } = pair;
      const unit = operator === '/' ? '1' : left.quantity.unit === '°C' ? 'K' : left.quantity.unit;
      const score = () =>
        (contextScore(left, context, bearing.aliases) + contextScore(right, context, bearing.aliases)) / 2 +
        (differenceOrRatio(pair) < 0 ? -1 : 0);
      return offerOf(
        said,
        pair.is,
        unit,
        bearing,
        score,
        () => `${titleOf(left)} ${operator === '/' ? 'over' : 'less'} ${titleOf(right)}`,
      );
    });
}

/** A look at the bare values, before units and uncertainties are worked out. */
function mayFit(said: Stated, pair: Pair): boolean {
  const unit = pair.operator === '/' ? '1' : pair.left.quantity.unit === '°C' ? 'K' : pair.left.quantity.unit;
  const fitting = inUnit(said, unit);
  if (isUnread(fitting)) return false;
  const value = differenceOrRatio(pair);
  const at = fitting.bySize ? Math.abs(value) : value;
  return at >= fitting.lower && at <= fitting.upper;
}

function differenceOrRatio({ left, right, operator }: Pair): number {
  return operator === '/' ? left.quantity.value / right.quantity.value : left.quantity.value - right.quantity.value;
}

function titleOf({ name, details, subject, fact }: Candidate): string {
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
