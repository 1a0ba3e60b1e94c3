/** What stands now against what stood: which figures changed, which sentences print differently, what no longer holds, which plots changed. */
import type { PublishedEntry, PublishedState } from '../../register/sealed/published-states.ts';
import { plainExpression } from '../../words/expression/plain-expression.ts';
import { matchStates, type Pair } from './match.ts';
import { inCanonical, plain, printsDifferently, sameValue } from './same-value.ts';
import { METHODS } from './sources.ts';

export interface ChangedNumber {
  readonly number: string;
  readonly was: string;
  readonly is: string;
  /** In the unit of `is`; null where the two cannot be subtracted. */
  readonly difference: number | null;
  readonly unit: string;
  /** The difference over the standard uncertainty of what it is; null where that is unknown or 0. */
  readonly standardUncertainties: number | null;
}

export interface ChangedSentence {
  readonly line: number;
  readonly column: number;
  readonly before: string;
  readonly after: string;
}

export interface NoLongerHeld {
  readonly line: number;
  readonly column: number;
  readonly kind: 'stated' | 'claim';
  readonly words: string;
  readonly verdict: PublishedEntry['verdict'];
  /** What the data says, in words. */
  readonly rests: string;
}

export interface ChangedPlot {
  readonly id: string;
  readonly title: string;
  readonly how: 'changed' | 'added' | 'removed';
}

export interface ChangedPicture {
  /** Below data/. */
  readonly path: string;
  readonly how: ChangedPlot['how'];
}

export interface NoteChanges {
  /** `notes/<slug>` or `scripts/<slug>`. */
  readonly of: string;
  readonly title: string;
  readonly figures: readonly ChangedNumber[];
  readonly sentences: readonly ChangedSentence[];
  readonly noLongerHeld: readonly NoLongerHeld[];
  readonly plots: readonly ChangedPlot[];
  readonly pictures: readonly ChangedPicture[];
  /** Numbers that have no partner on the other side: their text was edited, or what held them is absent. */
  readonly added: readonly string[];
  readonly removed: readonly string[];
  /** What it rests on and what is not as it was: files of data/ and content/, and “the methods”, that is the code that derives figures. */
  readonly because: readonly string[];
}

/** The cause that is no file. */
export const BY_METHODS = METHODS;

/** Changes of every note and script that stood then, in the order of those; one that is gone has lost all its numbers. */
export function changesSince(then: readonly PublishedState[], now: readonly PublishedState[]): NoteChanges[] {
  return then.map((was) => changesOf(was, now.find(({ of }) => of === was.of) ?? { ...was, entries: [], plots: [], pictures: [] }));
}

/** Whether anything changed. */
export function isChanged({ figures, sentences, noLongerHeld, plots, pictures, added, removed }: NoteChanges): boolean {
  return [figures, sentences, noLongerHeld, plots, pictures, added, removed].some((each) => each.length > 0);
}

function changesOf(was: PublishedState, is: PublishedState): NoteChanges {
  const { pairs, added, removed } = matchStates(was, is);
  return {
    of: was.of,
    title: is.title,
    figures: figuresOf(pairs),
    sentences: sentencesOf(pairs),
    noLongerHeld: pairs.flatMap(noLongerHeld),
    plots: plotsOf(was, is),
    pictures: picturesOf(was, is),
    added: added.map(inWords),
    removed: removed.map(inWords),
    because: causesOf(was, is),
  };
}

/** Names in the order of what it rests on now. Other data is reason enough: other methods are named only where no data changed. */
function causesOf({ sources: were }: PublishedState, { sources: are }: PublishedState): string[] {
  const then = new Map(were.map(({ name, sha256 }) => [name, sha256]));
  const names = are.flatMap(({ name, sha256 }) => (then.get(name) === sha256 ? [] : [name]));
  return names.some((name) => name.startsWith('data/')) ? names.filter((name) => name !== METHODS) : names;
}

/** Each number once, however often it is printed. */
function figuresOf(pairs: readonly Pair[]): ChangedNumber[] {
  const changed = pairs.filter((pair) => pair.is.kind !== 'claim' && pair.is.kind !== 'stated' && !sameValue(pair));
  const numbers = changed.map(({ was, is }): ChangedNumber => {
    const by = was.unit === is.unit ? is.value - was.value : rescaled({ was, is });
    const difference = by !== null && Number.isFinite(by) ? by : null;
    const standardUncertainties = difference === null || is.u === null || is.u === 0 ? null : difference / is.u;
    const unit = is.unit === '°C' ? 'K' : is.unit;
    return {
      number: plainExpression(is.expression),
      was: plain(was.shown),
      is: plain(is.shown),
      difference,
      unit,
      standardUncertainties,
    };
  });
  return [...new Map(numbers.map((each) => [JSON.stringify([each.number, each.was, each.is]), each])).values()];
}

/** The difference in the unit of what it is now, where the author or the printer chose another. */
function rescaled({ was, is }: Pair): number | null {
  const canonical = inCanonical(is.value, is.unit) - inCanonical(was.value, was.unit);
  const difference = canonical / (inCanonical(1, is.unit) - inCanonical(0, is.unit));
  return Number.isFinite(difference) ? difference : null;
}

/** A sentence with several changed numbers stands once. Highlights stand in none. */
function sentencesOf(pairs: readonly Pair[]): ChangedSentence[] {
  const changed = pairs.filter((pair) => pair.is.kind !== 'highlight' && printsDifferently(pair));
  const sentences = changed.map(({ was, is }) => ({ line: is.line, column: is.column, before: was.sentence, after: is.sentence }));
  return [...new Map(sentences.toReversed().map((each) => [JSON.stringify([each.before, each.after]), each])).values()].reverse();
}

function noLongerHeld({ was, is }: Pair): NoLongerHeld[] {
  if (is.kind !== 'stated' && is.kind !== 'claim') return [];
  if (was.verdict === is.verdict) return [];
  const { line, column, kind, shown, verdict, rests = '' } = is;
  return [{ line, column, kind, words: plain(shown), verdict, rests }];
}

function plotsOf(was: PublishedState, is: PublishedState): ChangedPlot[] {
  const then = new Map(was.plots.map((plot) => [plot.id, plot]));
  const now = new Map(is.plots.map((plot) => [plot.id, plot]));
  return [
    ...is.plots.flatMap(({ id, title, sha256 }): ChangedPlot[] => {
      const before = then.get(id);
      if (before?.sha256 === sha256) return [];
      return [{ id, title, how: before === undefined ? 'added' : 'changed' }];
    }),
    ...was.plots.filter(({ id }) => !now.has(id)).map(({ id, title }): ChangedPlot => ({ id, title, how: 'removed' })),
  ];
}

function picturesOf({ pictures: were = [] }: PublishedState, { pictures: are = [] }: PublishedState): ChangedPicture[] {
  const then = new Map(were.map(({ path, sha256 }) => [path, sha256]));
  const now = new Set(are.map(({ path }) => path));
  return [
    ...are.flatMap(({ path, sha256 }): ChangedPicture[] => {
      if (then.get(path) === sha256) return [];
      return [{ path, how: then.has(path) ? 'changed' : 'added' }];
    }),
    ...were.filter(({ path }) => !now.has(path)).map(({ path }): ChangedPicture => ({ path, how: 'removed' })),
  ];
}

function inWords({ kind, expression, shown, line }: PublishedEntry): string {
  return `${kind} ${plainExpression(expression)}: ${plain(shown)} (line ${line})`;
}
