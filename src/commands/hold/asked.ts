/** A number that is to be held, as its words and those around it say it. */
import { readUnit } from '../../quantities/units.ts';
import type { Sentence } from '../../words/directives/sentence-order.ts';
import { inUnit, readStated, type Stated, type Unread } from '../../words/stated/read.ts';
import { unread } from '../../words/stated/stated-number.ts';
import type { ContextWord } from './context.ts';
import { countedBy } from './counts.ts';
import { saysDifference, wordsAlone } from './rank.ts';

type InUnitOf = (unit: string) => Stated | Unread;

export interface Asked {
  readonly said: Stated;
  readonly words: string;
  /** The words around it, and its own: "more" of "0.9 W more" tells what is meant. */
  readonly context: readonly ContextWord[];
  /** The sentence before the number's words and behind them. */
  readonly sentence: Sentence;
  /** The words that say what it counts. */
  readonly counted: string | undefined;
  /** The unit that the number borrows from others of its list: no part of its words. */
  readonly borrowed: string | undefined;
  /** What the words say in the unit of a figure. */
  readonly inUnitOf: InUnitOf;
}

/** Prepares the search for a number. A plain temperature is no difference unless words beside it say so. */
export function askedBy(
  said: Stated,
  words: string,
  { context, sentence }: { readonly context: readonly ContextWord[]; readonly sentence: Sentence },
  borrowed?: string,
): Asked {
  const all = [...context, ...wordsAlone(words)];
  const counted = countedBy(words, said, sentence);
  const plain = said.unit === '°C' && !said.difference && !saysDifference(all);
  const inUnitOf = remembered((unit: string) =>
    plain && unit === 'K'
      ? unread('a temperature', said.start, 'a difference')
      : counted === undefined && isBare(said, words) && isOwnWord(unit)
        ? readStated(`${words} ${unit}`, unit)
        : inUnit(said, unit),
  );
  return { said, words, context: all, sentence, counted, borrowed, inUnitOf };
}

/** A number alone, as scores are said: "brisk scores 88.7". */
function isBare(said: Stated, words: string): boolean {
  const [side] = said.said.sides;
  const alone = said.unit === '1' && side.unit === undefined && side.amount.part === undefined && !said.said.comparison;
  return alone && words.slice(side.end).trim() === '';
}

/** Whether a unit is a score's own, that no number has without its author's word. */
export function isOwnWord(unit: string): boolean {
  return unit !== '1' && readUnit(unit) === undefined;
}

function remembered<T>(make: (unit: string) => T): (unit: string) => T {
  const known = new Map<string, T>();
  return (unit) => {
    const made = known.get(unit) ?? make(unit);
    known.set(unit, made);
    return made;
  };
}

/** Whether a number is said of two things: "2 watts less", "13 degrees below the quick one", "70 percent of its hour". */
export function compares({ said, context }: Asked): boolean {
  return said.said.comparison !== undefined || saysDifference(context) || said.said.sides.at(-1)?.unit?.kind === 'percent';
}
