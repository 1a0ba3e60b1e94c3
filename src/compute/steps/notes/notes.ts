/** The words of every note and script. */
import type { Figure } from '../../../figures/figure.ts';
import { triedFacts } from '../../../figures/stability/tried.ts';
import type { Problem } from '../../../problem.ts';
import type { Quantity } from '../../../quantities/quantity.ts';
import type { Note, Quoted, Register } from '../../../register/register.ts';
import { reachedRuns } from '../../../register/resolved/reached-runs.ts';
import { predecessorsOf } from '../../../register/sections/retests.ts';
import { withPlainFront } from '../../../words/front-words.ts';
import type { Recorded } from '../../../words/page/recorded-words.ts';
import type { Subject, Written } from '../../../words/written.ts';
import { digestOf } from '../../store/digest.ts';
import type { Store } from '../../store/store.ts';
import type { AttemptsOutcome } from '../attempts.ts';
import type { ComparisonOutcome } from '../comparisons.ts';
import type { RunOutcome, Runs } from '../runs/runs.ts';
import { type KeyedSubject, wordStep } from './word-step.ts';

export interface NoteOutcome {
  /** Its title, summary and disclosure as they print. */
  readonly note: Note;
  readonly written: Written;
  /** Ids of the runs that it reaches, also through comparisons, in its own order. */
  readonly reaches: readonly string[];
}

export interface Notes {
  readonly outcomes: readonly NoteOutcome[];
  readonly problems: readonly Problem[];
}

/** What the aliases of notes can stand for. */
export interface Computed {
  readonly runs: Runs;
  readonly comparisons: ReadonlyMap<string, ComparisonOutcome>;
  readonly attempts: ReadonlyMap<string, AttemptsOutcome>;
}

interface Named extends Computed {
  readonly register: Pick<Register, 'quoted'>;
}

interface Options extends Computed {
  readonly store: Store;
  readonly code: string;
  readonly register: Register;
  /** What was said in published scripts, by `scripts/<slug>`. */
  readonly recorded: ReadonlyMap<string, readonly Recorded[]>;
}

/** Writes all notes of the register against the figures of runs and comparisons. */
export function computeNotes({ store, code, register, runs, comparisons, attempts, recorded }: Options): Notes {
  const outcomes = [...register.notes].map(([id, note]) => {
    const subjects = subjectsOf(note, { runs, comparisons, attempts, register });
    const through = [...note.comparisons.values()].flatMap((id) => reachedRuns(register.comparisons.get(id)!));
    const own = [...note.runs.values(), ...through];
    const written = wordStep(store, code, note, subjects, recorded.get(id));
    return {
      note: withPlainFront(note, written),
      written,
      reaches: [...new Set([...own, ...own.flatMap((run) => predecessorsOf(run, register.runs))])],
    };
  });
  return { outcomes, problems: outcomes.flatMap(({ written }) => written.problems) };
}

/** The subjects of a note by alias, all of which must have been computed. */
export function subjectsOf(note: Note, { runs, comparisons, attempts, register }: Named): Map<string, KeyedSubject> {
  const subjects = new Map<string, KeyedSubject>();
  for (const [alias, id] of note.runs) subjects.set(alias, keyed(runs.outcomes.get(id)!));
  for (const [alias, id] of note.comparisons) subjects.set(alias, compared(comparisons.get(id)!));
  for (const [alias, id] of note.attempts ?? []) subjects.set(alias, tried(attempts.get(id)!));
  for (const [alias, id] of note.quoted ?? []) subjects.set(alias, quotedOf(register.quoted.get(id)!));
  return subjects;
}

function keyed({ run, task, result }: RunOutcome): KeyedSubject {
  const subject: Subject = {
    kind: 'run',
    id: run.id,
    title: run.title,
    figures: result.derived?.figures ?? new Map(),
    facts: new Map([...run.facts, ...repeatsOf(result.derived?.figures)]),
    names: new Map([
      ['device', run.device],
      ['specimen', run.specimen],
    ]),
    channels: run.channels.map(({ name, quantity }) => ({ name, quantity })),
    ...(run.photographs && { photographs: run.photographs }),
    ...(result.derived === null && { unusable: true }),
  };
  return { subject, key: task.key };
}

/** How often each test was repeated, as `repeats.<test>`: a count that sentences speak of. */
function repeatsOf(figures: ReadonlyMap<string, Figure> | undefined): [string, Quantity][] {
  return [...(figures ?? [])].flatMap(([key, figure]): [string, Quantity][] => {
    const repeats = figure.of?.n;
    if (figure.name !== 'score' || typeof repeats !== 'number') return [];
    return [[key.replace(/^score/, 'repeats'), { value: repeats, unit: '1', parts: [] }]];
  });
}

function compared({ comparison, key, figures }: ComparisonOutcome): KeyedSubject {
  const subject: Subject = {
    kind: 'comparison',
    id: comparison.id,
    title: comparison.title,
    figures: figures ?? new Map(),
    facts: new Map(),
    channels: [],
    ...(figures === null && { unusable: true }),
  };
  return { subject, key };
}

function tried({ attempts, key, ladder, figures }: AttemptsOutcome): KeyedSubject {
  const subject: Subject = {
    kind: 'attempts',
    id: attempts.id,
    title: attempts.title,
    figures,
    facts: triedFacts(ladder),
    channels: [],
    ...(ladder === null && { unusable: true }),
  };
  return { subject, key };
}

/** Figures of somebody else: their key is what the file states. */
function quotedOf({ id, title, figures }: Quoted): KeyedSubject {
  const subject: Subject = { kind: 'quoted', id, title, figures, facts: new Map(), channels: [] };
  return { subject, key: digestOf(['quoted', id, [...figures]]) };
}
