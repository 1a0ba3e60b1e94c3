/** Corrections as pages and the feed show them. */
import { stateKey } from '../published-state/present-state.ts';
import { newestFirst } from '../published-state/protect.ts';
import type { FeedModel, ShownCorrection } from '../results.ts';
import type { ComputedNote, Parts } from './parts.ts';

/** What a page says of the corrections of its note or script, and where they stand as text ('' where there are none). */
export function correctionsOf(
  { corrections }: Parts,
  computed: ComputedNote,
): { readonly corrections: readonly ShownCorrection[]; readonly correctionsFile: string } {
  const key = stateKey(computed.note);
  const own = corrections.get(key) ?? [];
  return { corrections: own, correctionsFile: own.length === 0 ? '' : `${key}/corrections.txt` };
}

/** The feed of corrections. Law 9: only of published notes, also where drafts show; null where there are none. */
export function feedModel(parts: Parts): FeedModel | null {
  const published = parts.notes.filter(({ note }) => note.status === 'published');
  const entries = published.flatMap((computed) => {
    const { corrections } = correctionsOf(parts, computed);
    return corrections.map((each) => ({ ...each, title: computed.note.title, path: `${stateKey(computed.note)}/` }));
  });
  const days = [...published.map(({ note }) => note.date), ...entries.map(({ since }) => since)].sort();
  return published.length === 0 ? null : { entries: newestFirst(entries), updated: days.at(-1)! };
}
