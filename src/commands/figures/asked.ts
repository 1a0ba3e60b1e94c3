/** What was asked for on the command line -> runs, comparisons and attempts of the register. */
import type { Attempts, Comparison, Register, Run } from '../../register/register.ts';
import { reachedRuns } from '../../register/resolved/reached-runs.ts';
import { findContent } from '../find-content.ts';

/** Runs by the name that stands over their figures: an alias of the note or comparison, or their id. */
export interface Asked {
  readonly runs: ReadonlyMap<string, Run>;
  readonly comparisons: ReadonlyMap<string, Comparison>;
  readonly attempts: ReadonlyMap<string, Attempts>;
}

/** A file of content/ that cannot be used, or the sentence that says why nothing was found. */
export type Unusable = { readonly file: string } | { readonly refused: string };

const FOLDERS = ['runs', 'comparisons', 'attempts', 'notes', 'scripts'];

/** Looks up one name. Whatever the file refers to is in the register too, or the file would not be. */
export function asked(root: string, typed: string, register: Register): Asked | Unusable {
  const found = findContent(root, typed, FOLDERS, 'run, comparison, attempts file, note or script');
  if ('refused' in found) return found;
  const [, folder = '', name = ''] = found.file.split('/');
  const id = name.replace(/\.md$/, '');
  return askedOf(register, folder, id) ?? found;
}

function askedOf(register: Register, folder: string, id: string): Asked | undefined {
  const none = { runs: new Map(), comparisons: new Map(), attempts: new Map() };
  if (folder === 'runs') {
    const run = register.runs.get(id);
    return run && { ...none, runs: new Map([[id, run]]) };
  }
  if (folder === 'attempts') {
    const attempts = register.attempts.get(id);
    return attempts && { ...none, attempts: new Map([[id, attempts]]) };
  }
  if (folder === 'comparisons') {
    const comparison = register.comparisons.get(id);
    return comparison && { ...none, runs: runsOf(register, comparison.runs), comparisons: new Map([[id, comparison]]) };
  }
  const note = register.notes.get(`${folder}/${id}`);
  if (!note) return undefined;
  const comparisons = pick(note.comparisons, register.comparisons);
  const compared = [...comparisons.values()].flatMap((comparison) => [...runsOf(register, comparison.runs)]);
  const own = runsOf(register, note.runs);
  const named = new Set([...own.values()].map((run) => run.id));
  const rest = compared.filter(([, run]) => !named.has(run.id)).map(([, run]) => [run.id, run] as const);
  return { runs: new Map([...own, ...rest]), comparisons, attempts: pick(note.attempts ?? new Map(), register.attempts) };
}

function runsOf(register: Register, aliases: ReadonlyMap<string, string>): ReadonlyMap<string, Run> {
  return pick(aliases, register.runs);
}

function pick<T>(aliases: ReadonlyMap<string, string>, from: ReadonlyMap<string, T>): ReadonlyMap<string, T> {
  return new Map([...aliases].flatMap(([alias, id]) => (from.has(id) ? [[alias, from.get(id)!] as const] : [])));
}

/** All that was asked for, in the order of the line. A run has its id for a name where its alias is that of another run too. */
export function together(all: readonly Asked[]): Asked {
  const runs = all.flatMap((each) => [...each.runs]);
  const shared = (alias: string, id: string) => runs.some(([other, run]) => other === alias && run.id !== id);
  return {
    runs: new Map(runs.map(([alias, run]) => [shared(alias, run.id) ? run.id : alias, run] as const)),
    comparisons: new Map(all.flatMap(({ comparisons }) => [...comparisons])),
    attempts: new Map(all.flatMap(({ attempts }) => [...attempts])),
  };
}

/** The register cut down to what figures need of it. */
export function neededOf(register: Register, { runs, comparisons, attempts }: Asked): Register {
  const ids = new Set([...runs.values()].map(({ id }) => id));
  for (const comparison of comparisons.values()) for (const id of reachedRuns(comparison)) ids.add(id);
  return {
    ...register,
    runs: new Map([...ids].flatMap((id) => (register.runs.has(id) ? [[id, register.runs.get(id)!] as const] : []))),
    comparisons: new Map([...comparisons.values()].map((comparison) => [comparison.id, comparison])),
    attempts: new Map([...attempts.values()].map((tried) => [tried.id, tried])),
  };
}
