/** Pages that a note brings into the site besides its own. They are protected once it is published, and its links may lead to them. */
import type { Note, Register } from '../../register/register.ts';
import type { PageFolder } from '../../register/sections/former-addresses.ts';

/** A note, and the runs that it reaches. */
interface Bringing {
  readonly note: Note;
  readonly reaches: readonly string[];
}

type Known = Pick<Register, 'runs' | 'attempts'>;

/** For each folder of such pages, the ids that a note brings; undefined where a file with errors hides one. */
const BROUGHT: Readonly<Record<PageFolder, (bringing: Bringing, register: Known) => readonly (string | undefined)[]>> = {
  runs: ({ reaches }) => reaches,
  devices: ({ note, reaches }, register) => [
    ...reaches.map((id) => register.runs.get(id)?.device),
    ...[...(note.attempts?.values() ?? [])].map((id) => register.attempts.get(id)?.device),
  ],
  comparisons: ({ note }) => [...note.comparisons.values()],
};

/** Their addresses below the base, each once. */
export function broughtPages(bringing: Bringing, register: Known): string[] {
  return Object.entries(BROUGHT).flatMap(([folder, idsOf]) => {
    const ids = idsOf(bringing, register).filter((id) => id !== undefined);
    return [...new Set(ids)].map((id) => `${folder}/${id}/`);
  });
}
