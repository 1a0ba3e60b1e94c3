/** The words of every note and script. */
import type { Problem } from '../problem.ts';
import type { Note, Register } from '../register/register.ts';
import type { Subject, Written } from '../words/written.ts';
import type { RunOutcome, Runs } from './runs.ts';
import type { Store } from './store.ts';
import { type Keyed, wordStep } from './word-step.ts';

export interface NoteOutcome {
  readonly note: Note;
  readonly key: string;
  readonly written: Written;
  /** Ids of the runs that it reaches, in its own order. */
  readonly reaches: readonly string[];
}

export interface Notes {
  readonly outcomes: readonly NoteOutcome[];
  readonly problems: readonly Problem[];
}

interface Options {
  readonly store: Store;
  readonly code: string;
  readonly register: Register;
  readonly runs: Runs;
}

/** Writes all notes of the register against the runs' figures. */
export function computeNotes({ store, code, register, runs }: Options): Notes {
  const outcomes = [...register.notes.values()].map((note) => {
    const subjects = new Map<string, Keyed>();
    for (const [alias, id] of note.runs) subjects.set(alias, keyed(runs.outcomes.get(id)!));
    return { note, ...wordStep(store, code, note, subjects), reaches: [...new Set(note.runs.values())] };
  });
  return { outcomes, problems: outcomes.flatMap(({ written }) => written.problems) };
}

function keyed({ run, task, result }: RunOutcome): Keyed {
  const subject: Subject = {
    kind: 'run',
    id: run.id,
    title: run.title,
    figures: result.derived?.figures ?? new Map(),
    facts: run.facts,
    channels: run.log.channels.map(({ name, quantity }) => ({ name, quantity })),
    ...(result.derived === null && { unusable: true }),
  };
  return { subject, key: task.key };
}
