/** A number that was published keeps its address where its sentence was edited since. */
import type { PublishedState } from '../../register/sealed/published-states.ts';
import type { Written } from '../../words/written.ts';
import type { NoteOutcome } from '../steps/notes/notes.ts';
import { matchEntries } from './match.ts';

export interface Addressed {
  readonly outcome: NoteOutcome;
  /** The same as it would go out. */
  readonly present: PublishedState;
}

/** Gives each number the id under which its partner of the published state went out; one that another number has by now stays with that. */
export function keepIds({ outcome, present }: Addressed, state: PublishedState | undefined): Addressed {
  const ids = state === undefined ? new Map<string, string>() : publishedIds(state, present);
  if (ids.size === 0) return { outcome, present };
  const named = <T extends { readonly id?: string | undefined }>(entry: T): T => ({
    ...entry,
    id: ids.get(entry.id ?? '') ?? entry.id,
  });
  return {
    outcome: { ...outcome, written: renamed(outcome.written, ids, named) },
    present: { ...present, entries: present.entries.map(named) },
  };
}

/** By the id that a number would have now. */
function publishedIds(state: PublishedState, present: PublishedState): Map<string, string> {
  const taken = new Set(present.entries.map(({ id }) => id));
  const ids = new Map<string, string>();
  for (const { was, is } of matchEntries(state.entries, present.entries).pairs) {
    if (was.id === undefined || is.id === undefined || taken.has(was.id)) continue;
    taken.add(was.id);
    ids.set(is.id, was.id);
  }
  return ids;
}

const HELD = /<a class="held" id="([^"]+)" href="#held:\1"/g;

function renamed(
  written: Written,
  ids: ReadonlyMap<string, string>,
  named: <T extends { readonly id: string }>(entry: T) => T,
): Written {
  const linked = (html: string) =>
    html.replaceAll(HELD, (link, id: string) => {
      const kept = ids.get(id);
      return kept === undefined ? link : `<a class="held" id="${kept}" href="#held:${kept}"`;
    });
  return {
    ...written,
    entries: written.entries.map(named),
    pieces: written.pieces.map((piece) => (typeof piece === 'string' ? linked(piece) : piece)),
  };
}
