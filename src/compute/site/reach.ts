/** Law 9: what goes into a site is what its published notes reach, and no more. */

import type { Scope } from '../results.ts';
import type { NoteOutcome } from '../steps/notes/notes.ts';

/** The notes that a scope shows, and the ids of runs, comparisons and attempts that they reach. In dev everything shows, runs without a note too. */
export function reach(
  scope: Scope,
  notes: readonly NoteOutcome[],
  allRuns: Iterable<string>,
  allComparisons: Iterable<string>,
  allAttempts: Iterable<string>,
): { notes: NoteOutcome[]; runs: Set<string>; comparisons: Set<string>; attempts: Set<string> } {
  if (scope === 'all') {
    return { notes: [...notes], runs: new Set(allRuns), comparisons: new Set(allComparisons), attempts: new Set(allAttempts) };
  }
  const published = notes.filter(({ note }) => note.status === 'published');
  return {
    notes: published,
    runs: new Set(published.flatMap(({ reaches }) => reaches)),
    comparisons: new Set(published.flatMap(({ note }) => [...note.comparisons.values()])),
    attempts: new Set(published.flatMap(({ note }) => [...(note.attempts?.values() ?? [])])),
  };
}
