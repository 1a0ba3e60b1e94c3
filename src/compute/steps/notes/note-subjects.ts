/** One note with the figures that its aliases stand for, for commands that read words: only its own runs are computed, or taken from the store. */

import type { Problem } from '../../../problem.ts';
import { readRegister } from '../../../register/read.ts';
import type { Note, Register } from '../../../register/register.ts';
import { reachedRuns } from '../../../register/resolved/reached-runs.ts';
import type { Subject } from '../../../words/written.ts';
import { dataFiles, readProject } from '../../project/read-project.ts';
import { codeDigests } from '../../store/code.ts';
import { openStore } from '../../store/store.ts';
import { computeAttempts } from '../attempts.ts';
import { computeComparisons } from '../comparisons.ts';
import { openPool } from '../pool.ts';
import { computeRuns } from '../runs/runs.ts';
import { subjectsOf } from './notes.ts';

export interface NoteSubjects {
  readonly note: Note;
  readonly subjects: ReadonlyMap<string, Subject>;
  /** Of the files that the note rests on, and of its logs. */
  readonly problems: readonly Problem[];
}

/** The note of a file such as `content/notes/x.md`; without a note where the register could not read it: `problems` then says why. */
export async function noteSubjects(root: string, file: string): Promise<NoteSubjects | { readonly problems: readonly Problem[] }> {
  const project = readProject(root);
  const { register, problems } = readRegister(project.content, dataFiles(root));
  const found = [...project.problems, ...problems];
  const note = [...register.notes.values()].find((each) => each.file === file);
  if (!note) return { problems: found };
  const code = codeDigests();
  const store = openStore(root);
  const pool = openPool(root);
  try {
    const own = onlyFor(register, note);
    const runs = await computeRuns({ root, store, pool, code: code.run, register: own });
    const comparisons = computeComparisons({ store, code: code.comparisons, register: own, runs });
    const attempts = computeAttempts({ root, code: code.attempts, register: own });
    const keyed = subjectsOf(note, { runs, comparisons, attempts, register });
    return {
      note,
      subjects: new Map([...keyed].map(([alias, { subject }]) => [alias, subject])),
      problems: [...found, ...runs.problems],
    };
  } finally {
    await pool.close();
  }
}

/** The note of a file that had another text, which is not written; and what is then wrong with the file itself. */
export function noteWith(
  root: string,
  file: string,
  text: string,
): { readonly note: Note | undefined; readonly problems: readonly Problem[] } {
  const content = readProject(root).content.map((each) => (each.path === file ? { ...each, text } : each));
  const { register, problems } = readRegister(content, dataFiles(root));
  return {
    note: [...register.notes.values()].find((each) => each.file === file),
    problems: problems.filter(({ place }) => place.file === file),
  };
}

/** The register less the runs, comparisons and attempts that a note does not reach. */
function onlyFor(register: Register, note: Note): Register {
  const comparisons = only(register.comparisons, new Set(note.comparisons.values()));
  const through = [...comparisons.values()].flatMap(reachedRuns);
  return {
    ...register,
    comparisons,
    runs: only(register.runs, new Set([...note.runs.values(), ...through])),
    attempts: only(register.attempts, new Set(note.attempts?.values())),
  };
}

function only<T>(all: ReadonlyMap<string, T>, ids: ReadonlySet<string>): Map<string, T> {
  return new Map([...all].filter(([id]) => ids.has(id)));
}
