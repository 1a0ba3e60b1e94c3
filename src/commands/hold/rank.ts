/** How well a candidate goes with the words around a number. Higher is better; only the order matters. */
import { definitionOf } from '../../figures/catalogue.ts';
import { numeralWords } from '../../words/stated/numeral-words.ts';
import type { Stated } from '../../words/stated/read.ts';
import type { Candidate } from './candidates.ts';
import type { ContextWord } from './context.ts';
import { hintsOf, priorOf } from './hints.ts';

const ALIAS = 3;
const HINT = 2;
const DETAIL = 2.5;
const DETAIL_UNSAID = -1.2;
/** A figure of which no word is said. */
const UNSAID = -0.5;
const CLOSE = 0.6;
/** "Under" and "over" fit much: what is near the number is meant. */
const CLOSE_OPEN = 2;

/** Words for an alias: itself, and words of its run's title that no other title of the note has; for a detail: those that no other has. */
export type OwnWords = ReadonlyMap<string, readonly string[]>;

/** The score of a candidate by its words alone. */
export function contextScore(candidate: Candidate, context: readonly ContextWord[], words: OwnWords): number {
  const { alias, name, details } = candidate;
  const own = details.map((detail) => detailScore(detail, context, words));
  const said = hits(context, [...hintsOf(name), ...labelWords(name)]);
  return (
    ALIAS * strongest(context, words.get(alias) ?? [alias]) +
    (said > 0 ? HINT * said : UNSAID) +
    own.reduce((sum, score) => sum + score, 0) +
    priorOf(name)
  );
}

/** How far words name a figure, of whichever run: its name and its details. 0 where they say no word of either. */
export function quantityScore({ name, details }: Candidate, context: readonly ContextWord[], words: OwnWords): number {
  const own = details.map((detail) => detailScore(detail, context, words));
  const said = hits(context, [...hintsOf(name), ...labelWords(name)]);
  return said === 0 && own.every((score) => score <= 0) ? 0 : HINT * said + own.reduce((sum, score) => sum + score, 0);
}

function detailScore(detail: string, context: readonly ContextWord[], own: OwnWords): number {
  const words = own.get(detail) ?? [];
  if (words.length === 0) return 0;
  const said = strongest(context, words);
  return said > 0 ? DETAIL * Math.max(said, 0.3) : DETAIL_UNSAID;
}

/** The words of a detail: of "0 mV", which says that nothing was added, those that people say; of "60 mV" its number. */
export function detailWords(detail: string): readonly string[] {
  if (/^0\b/.test(detail)) return ['nothing', 'without', 'unraised'];
  // A step of the clock is said in either unit: "a third of the load at 2.6 GHz".
  const step = /^at_(\d+)_MHz$/.exec(detail)?.[1];
  if (step !== undefined) return [step, String(Number(step) / 1000), (Number(step) / 1000).toFixed(1)];
  const number = /^\d+(?:\.\d+)?(?= \S+$)/.exec(detail)?.[0];
  if (number !== undefined)
    return [
      number,
      ...(numeralWords(number)
        ?.split(/[^a-z]+/)
        .slice(0, 1) ?? []),
    ];
  return detail
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((word) => word.length > 2 && !COMMON.has(word));
}

/** Words of details that say nothing of which one is meant: "the quick one" is no test on one core. */
const COMMON = new Set('one two all and the core cores with without test'.split(' '));

function labelWords(name: string): string[] {
  return (definitionOf(name)?.label ?? '')
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((word) => word.length > 3);
}

/** The weight of the strongest word that is one of these, or begins like one of four letters and more. */
export function strongest(context: readonly ContextWord[], words: readonly string[]): number {
  return Math.max(0, ...context.filter(({ word }) => words.some((each) => matches(word, each))).map(({ weight }) => weight));
}

/** Each hint counts once, and no more than three. */
function hits(context: readonly ContextWord[], hints: readonly string[]): number {
  const found = [...new Set(hints)].map((hint) => strongest(context, [hint])).filter((weight) => weight > 0);
  return found
    .sort((a, b) => b - a)
    .slice(0, 3)
    .reduce((sum, weight) => sum + weight, 0);
}

/** Whether a word is a hint, or begins like it. */
export function matches(word: string, hint: string): boolean {
  return word === hint || (hint.length >= 4 && word.startsWith(hint)) || (word.length >= 4 && hint.startsWith(word));
}

/** How near a value lies to what was said, within what the words allow. */
export function closeness({ lower, upper, nominal, bySize }: Stated, value: number): number {
  const at = bySize ? Math.abs(value) : value;
  if (Number.isFinite(lower) && Number.isFinite(upper)) {
    const half = (upper - lower) / 2;
    return half === 0 ? CLOSE : CLOSE * (1 - Math.abs(at - (upper + lower) / 2) / half);
  }
  return CLOSE_OPEN * Math.exp(-Math.abs(at - nominal) / (0.05 * Math.abs(nominal) + Number.MIN_VALUE));
}

/** Words that speak of a difference between two temperatures, by their beginnings. */
const DIFFERENCE =
  /^(?:warmer|warms|warmed|hotter|cooler|cools|cooled|colder|higher|lower|faster|slower|longer|shorter|more|less|rise|rose|risen|rising|climb|gain|increas|decreas|drop|fell|fall|difference|gap|spread|delta|margin|headroom|spare|above|over|below|under|short|shy|apart|away|between|by|behind|ahead|drift|range|swing|extra|further|another|additional|becom|save|cost)/;
/** Words further off speak of something else. */
const OF_THIS_NUMBER = 0.36;

/** The words of the number itself. */
export function wordsAlone(text: string): ContextWord[] {
  return (text.toLowerCase().match(/\p{L}+/gu) ?? []).map((word) => ({ word, weight: 1 }));
}

/** Whether words near a number say that it is a difference; "from" does so right behind it: "20 degrees from the limit". */
export function saysDifference(context: readonly ContextWord[]): boolean {
  return context.some(
    ({ word, weight, behind }) => weight >= OF_THIS_NUMBER && (DIFFERENCE.test(word) || (word === 'from' && behind === 1)),
  );
}
