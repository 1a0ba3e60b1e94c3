/** Whether the words around a number name a figure: what people seldom speak of is meant only where they do. */
import { readUnit } from '../../quantities/units.ts';
import type { Candidate } from './candidates.ts';
import type { ContextWord } from './context.ts';
import { hintsOf, priorOf } from './hints.ts';
import { matches } from './rank.ts';

/** Words of hints that stand in sentences about anything. */
const EVERYWHERE = new Set(
  'per for and the of at in to more less most least last first second up down over under above below after before until time times each take takes took what ran runs use uses used next end ends part order faster slower run'.split(
    ' ',
  ),
);

/** Whether a word of the number's own sentence is one of the figure's: one that means something by itself, and that no name in `beside` shares. */
export function isNamed(name: string, context: readonly ContextWord[], beside?: string): boolean {
  const others = new Set(beside === undefined ? [] : hintsOf(beside));
  // The words of a sentence have no hyphens, and half of a name is none.
  const hints = hintsOf(name).filter((hint) => !EVERYWHERE.has(hint) && !others.has(hint) && !hint.includes('-'));
  return context.some(({ word, own }) => own === true && hints.some((hint) => matches(word, hint)));
}

/** Whether people mean it without naming it: what write-ups are about. */
export function isCommon(name: string): boolean {
  return priorOf(name) > 0;
}

/** Units as people say them beside a number, by the canonical one: "23 kJ … and 37, which is 1.6 times as much" speaks of energy. */
const SPOKEN_UNITS: readonly (readonly [unit: string, words: RegExp])[] = [
  ['W', /^(?:[mk]?w|(?:milli|kilo)?watts?)$/],
  ['J', /^(?:[mk]?j|k?wh|(?:kilo|mega)?joules?|watt-hours?)$/],
  ['Hz', /^(?:[kmg]hz|(?:mega|giga)hertz)$/],
  ['s', /^(?:ms|min|seconds?|minutes?)$/],
  ['A', /^(?:ma|amps?|amperes?|milliamps?)$/],
  ['V', /^(?:m?v|(?:milli)?volts?)$/],
];

/** 1 where the sentence has numbers in the unit, −1 where only in others, 0 where in none: what a ratio in it is probably of. */
export function unitSaid(unit: string, context: readonly ContextWord[]): -1 | 0 | 1 {
  const own = context.filter(({ own: mine }) => mine === true);
  const [word = ''] = unit.toLowerCase().split(/[^\p{L}]/u);
  if (readUnit(unit) === undefined && word.length > 1 && own.some((each) => each.word === word)) return 1;
  const said = SPOKEN_UNITS.filter(([, words]) => own.some(({ word }) => words.test(word))).map(([each]) => each);
  if (said.length === 0) return 0;
  return said.includes(unit) ? 1 : -1;
}

/** Figures of which people hardly speak by other words than their own. */
const SELDOM = -0.3;

/** Whether a figure alone may be meant: a bare ratio needs a name, and so does what is seldom spoken of. A count holds counts alone. */
export function isMeant({ name, details, quantity: { unit }, fact, subject }: Candidate, context: readonly ContextWord[]): boolean {
  if (fact && unit === '1') return false;
  if (unit === '1') return isCommon(name) || isNamed(name, context);
  if (subject.kind === 'comparison' && details.length === 0) return isNamed(name, context);
  return priorOf(name) >= SELDOM || isNamed(name, context);
}
