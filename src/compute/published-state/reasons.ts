/** Which reasons of the front matter are of which printed number: one expression may be printed in several ways, and several times over. */
import type { Note, StatedCorrection } from '../../register/register.ts';
import type { PublishedState } from '../../register/sealed/published-states.ts';
import { plainExpression } from '../../words/expression/plain-expression.ts';
import { ABSENT, type Pair } from './match.ts';
import { plain } from './same-value.ts';

/** A pair whose number is no longer what was published; `instead` also has words that would be true where those of the author are not. */
export type Changed = Pair;

/** The number of an entry, as corrections name it. */
export function numberOf({ expression }: Pair['is']): string {
  return plainExpression(expression);
}

/** What is printed from now on. */
export function nowOf({ is, instead }: Changed): string {
  return plain(instead ?? is.shown);
}

/** Whether an entry is in the author's own words. */
export function isOwnWords({ kind }: Pair['is']): boolean {
  return kind === 'stated' || kind === 'claim';
}

/** Whether an earlier publication closed a correction. */
export function isPast({ number, now, since }: StatedCorrection, history: PublishedState['history']): boolean {
  return history.some((closed) => closed.number === plainExpression(number) && closed.is === plain(now) && closed.since === since);
}

/** Corrections of a number that no publication closed, oldest first. */
export function openReasons({ corrections = [] }: Note, history: PublishedState['history'], number: string): StatedCorrection[] {
  return corrections
    .filter((each) => plainExpression(each.number) === number && !isPast(each, history))
    .toSorted((a, b) => (a.since < b.since ? -1 : a.since > b.since ? 1 : 0));
}

/**
 * The reasons of a change, oldest first; none where the last of them is not for what is printed now, also where an older one was: a number
 * may go back to what it said before. `own`: the open reasons of its number, oldest first; `pairs`: all that the note prints.
 */
export function reasonsFor(changed: Changed, own: readonly StatedCorrection[], pairs: readonly Changed[]): StatedCorrection[] {
  const others = pairs.filter((each) => numberOf(each.is) === numberOf(changed.is) && !isSamePrinting(each, changed));
  const mine = own.filter((reason) => mayBeOf(reason, changed) || !others.some((other) => mayBeOf(reason, other)));
  if (!others.some((other) => mine.some((reason) => mayBeOf(reason, other)))) {
    return mine.length > 0 && plain(mine.at(-1)!.now) === nowOf(changed) ? mine : [];
  }
  // Two printings of one form: what the other one prints now is not of this one; about the rest nothing can be told.
  const last = mine.findLastIndex(({ now }) => plain(now) === nowOf(changed));
  const elsewhere = new Set(others.map(nowOf));
  return mine.slice(0, last + 1).filter((reason, index) => index === last || !elsewhere.has(plain(reason.now)));
}

function isSamePrinting(a: Changed, b: Changed): boolean {
  return plain(a.was.shown) === plain(b.was.shown) && nowOf(a) === nowOf(b);
}

/** Whether a reason has the form of a printed number, or of words where the author's own stand. */
function mayBeOf({ now }: StatedCorrection, pair: Changed): boolean {
  if (plain(now) === nowOf(pair)) return true;
  const form = formOf(plain(now));
  if (isOwnWords(pair.is)) return form === undefined || [plain(pair.was.shown), nowOf(pair)].includes(plain(now));
  return (
    plain(now) === ABSENT || (form !== undefined && [plain(pair.was.shown), nowOf(pair)].some((shown) => formOf(shown) === form))
  );
}

/** What stands behind the digits, such as a unit; undefined for words. */
function formOf(shown: string): string | undefined {
  return /^[−+-]?\d[\d.,\s]*(?:[×e].*\d)?\s*(\D*)$/.exec(shown)?.[1]?.trim();
}
