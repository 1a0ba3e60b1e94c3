/** What the archive of a note holds: the note, its scripts, and all that they reach (law 9: published alone). */
import type { Note, Register } from '../../register/register.ts';
import type { ComputedAttempts, ComputedComparison, ComputedNote, ComputedRun, SiteContents } from '../contents/site-contents.ts';
import { scriptsFor } from '../pages/note.ts';

export interface ArchiveScope {
  /** The note itself first. */
  readonly notes: readonly ComputedNote[];
  readonly runs: ReadonlyMap<string, ComputedRun>;
  readonly comparisons: readonly ComputedComparison[];
  readonly attempts: ReadonlyMap<string, ComputedAttempts>;
  /** Ids of what its notes and comparisons quote. */
  readonly quoted: readonly string[];
  /** Ids. */
  readonly devices: readonly string[];
  readonly instruments: readonly string[];
}

/** In the order in which the site has them. */
export function archiveScope(parts: SiteContents, note: ComputedNote): ArchiveScope {
  const scripts = scriptsFor(parts, note).filter((script) => script.note.status === 'published');
  const notes = [note, ...scripts];
  const named = (of: (note: Note) => Iterable<string>) => new Set(notes.flatMap((each) => [...of(each.note)]));
  const reached = new Set(notes.flatMap(({ reaches }) => reaches));
  const compared = named(({ comparisons }) => comparisons.values());
  const tried = named(({ attempts }) => attempts?.values() ?? []);
  const runs = new Map([...parts.runs].filter(([id]) => reached.has(id)));
  const attempts = new Map([...parts.attempts].filter(([id]) => tried.has(id)));
  const cited = new Set([
    ...named(({ quoted }) => quoted?.values() ?? []),
    ...[...compared].flatMap((id) => parts.register.comparisons.get(id)?.quoted ?? []),
  ]);
  const devices = new Set([
    ...[...runs.values()].map(({ run }) => run.device),
    ...[...attempts.values()].map(({ attempts: { device } }) => device),
  ]);
  return {
    notes,
    runs,
    comparisons: [...parts.comparisons].filter(([id]) => compared.has(id)).map(([, computed]) => computed),
    attempts,
    quoted: [...parts.register.quoted.keys()].filter((id) => cited.has(id)),
    devices: inOrder(parts.register.devices, devices),
    instruments: inOrder(parts.register.instruments, new Set([...runs.values()].flatMap(({ run }) => run.instruments))),
  };
}

function inOrder(all: Register['devices'] | Register['instruments'], some: ReadonlySet<string>): string[] {
  return [...all.keys()].filter((id) => some.has(id));
}
