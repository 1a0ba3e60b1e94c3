/** Where a note stands, and what it is about. */
import type { ComputedNote, SiteContents } from './site-contents.ts';

/** The page of a note or script. */
export function notePath({ note }: Pick<ComputedNote, 'note'>): string {
  return `${note.kind}s/${note.id}/`;
}

/** Ids of the devices of the runs and attempts that a note reaches, each once. */
export function devicesOf(parts: SiteContents, { note, reaches }: ComputedNote): string[] {
  const tried = [...(note.attempts?.values() ?? [])].map((id) => parts.attempts.get(id)!.attempts.device);
  return [...new Set([...reaches.map((id) => parts.runs.get(id)!.run.device), ...tried])];
}
