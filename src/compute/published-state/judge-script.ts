/** Law 13 for a script: what was recorded stays; each number that the data no longer bears becomes a correction with its cue time. */
import type { Problem } from '../../problem.ts';
import type { Note } from '../../register/register.ts';
import type { Correction, PublishedEntry, PublishedState } from '../../register/sealed/published-states.ts';
import { dataOf } from '../../words/directives/stated-report.ts';
import { plainExpression } from '../../words/expression/plain-expression.ts';
import type { LedgerEntry, Written } from '../../words/written.ts';
import { matchEntries, type Pair } from './match.ts';
import { plain, printsDifferently } from './same-value.ts';

/** Why a number of a script is no longer so, where its author gives no reason. */
export const UNEXPLAINED = 'The data no longer bears these words.';

export interface JudgedScript {
  readonly corrections: readonly Correction[];
  /** The script with what was recorded in the place of what would be printed now, less the problems that are corrections. */
  readonly written: Written;
}

/** Rules that a change of the data breaks, where the words are as they were. */
export const BY_DATA: ReadonlySet<string> = new Set(['stated-differs', 'claim-fails', 'claim-undecided', 'claim-told']);

/** Compares a script with its published state. `dateOf` gives the day of a run, by subject. */
export function judgeScript(
  note: Note,
  written: Written,
  state: PublishedState,
  present: PublishedState,
  dateOf: (subject: string) => string,
  insteadOf: (entry: PublishedEntry) => string | undefined = () => undefined,
): JudgedScript {
  const { pairs } = matchEntries(state.entries, present.entries);
  const unborne = pairs.filter(isUnborne);
  const recorded = new Map(unborne.map(({ was, is }) => [present.entries.indexOf(is), was]));
  const places = new Set(unborne.map(({ is }) => `${is.line}:${is.column}`));
  return {
    corrections: unborne
      .filter(({ is }) => is.kind !== 'highlight')
      .map((pair) => correctionOf(note, pair, state, dateOf, insteadOf(pair.is))),
    written: {
      ...written,
      entries: written.entries.map((entry, index) => asRecorded(entry, recorded.get(index))),
      problems: written.problems.filter((problem) => !(BY_DATA.has(problem.rule) && places.has(placeOf(problem)))),
    },
  };
}

function placeOf({ place }: Problem): string {
  return `${place.line}:${place.column}`;
}

/** Printed otherwise, absent by now, or in the author's words and no longer decided as it was. */
function isUnborne(pair: Pair): boolean {
  const { was, is } = pair;
  if (is.kind !== 'stated' && is.kind !== 'claim') return printsDifferently(pair) || was.verdict !== is.verdict;
  return plain(was.shown) === plain(is.shown) && was.verdict !== is.verdict;
}

function correctionOf(
  note: Note,
  { was, is }: Pair,
  state: PublishedState,
  dateOf: (subject: string) => string,
  instead: string | undefined,
): Correction {
  const number = plainExpression(is.expression);
  const now = instead === undefined ? nowOf(is) : plain(instead);
  const own = (note.corrections ?? []).filter((each) => plainExpression(each.number) === number);
  const stated = own.findLast((each) => plain(each.now) === now) ?? own.at(-1);
  const days = [state.date, ...was.held.map(dateOf), ...is.held.map(dateOf)].sort();
  return {
    since: stated?.since ?? days.at(-1)!,
    number,
    was: plain(was.shown),
    is: now,
    reason: stated?.reason ?? UNEXPLAINED,
    // The subtitles of the finished video may have come since.
    cue: is.cue ?? was.cue,
    sentence: was.sentence,
  };
}

/** What the data says now: the number, or for the author's own words the numbers on which the verdict rests. */
function nowOf({ kind, shown, verdict, rests = '' }: PublishedEntry): string {
  if ((kind === 'value' || kind === 'table') && verdict === 'cannot be told') return plain(rests);
  if (kind === 'stated') return plain(dataOf(rests));
  return plain(kind === 'claim' ? rests : shown);
}

/** The entry with what was said of it. */
function asRecorded(entry: LedgerEntry, was: PublishedEntry | undefined): LedgerEntry {
  if (was === undefined) return entry;
  const { value, unit, u, shown, verdict } = was;
  return { ...entry, value, unit, u, shown, verdict, uncertainty: '', ...(was.rests === undefined ? {} : { rests: was.rests }) };
}
