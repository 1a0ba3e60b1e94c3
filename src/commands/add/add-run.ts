/** One run of the files that belong together: its channels found, its files shown, itself written. */
import { dirname } from 'node:path';
import type { Inspection } from '../../intake/inspect.ts';
import { idFromWords } from '../../register/values/names.ts';
import { stemOf } from './ending.ts';
import { firstFirst } from './first-log.ts';
import type { Group } from './group.ts';
import { loadOf } from './load-edges.ts';
import { type Looked, tellLog } from './look-at.ts';
import { type GivenNames, matchColumns } from './match.ts';
import type { AddOptions } from './options.ts';
import type { Output } from './output.ts';
import { type KnownSetup, readProject } from './project.ts';
import { composeLogless, type Draft } from './run-file.ts';
import { distinctNames, freeId, idOf, titleOf } from './run-names.ts';
import { clockOf, tableLines } from './table-lines.ts';
import { write, writeRun } from './write-run.ts';

interface Shared {
  readonly given: GivenNames;
  /** Columns without a unit that stand, as comments, in a setup that was just written. */
  readonly inSetup: ReadonlySet<string>;
}

/** Finds a run's channels, shows its files, and writes it. */
export function addRun(
  root: string,
  { logs: members, tables }: Group,
  looked: ReadonlyMap<string, Looked>,
  { given, inSetup }: Shared,
  { date, ready }: AddOptions,
  output: Output,
): boolean {
  const project = readProject(root);
  const setup = project.setups.length === 1 ? project.setups[0] : undefined;
  const logs = firstFirst(members, looked);
  const taken = new Set<string>();
  const named = distinctNames(logs);
  const read = logs.map((path, at) => {
    const each = looked.get(path)!;
    const matches = matchColumns(each.inspection.columns, at === 0 ? (setup?.channels ?? []) : free(setup, taken), given, taken);
    for (const { name } of matches.channels) taken.add(name);
    const found = each.inspection.time ? loadOf(each.bytes, path, each.inspection, matches) : null;
    tellLog(root, each, matches, typeof found === 'string' ? found : (found?.words ?? null), output);
    const load = typeof found === 'string' ? null : found;
    return { ...each, name: named[at]!, matches, load };
  });
  const [first, ...others] = read;
  if (!first) return true;
  const { path, inspection, matches, load } = first;
  const id = freeId(root, path);
  if (id === undefined) {
    output.err(
      `data/${path} is not added: content/runs/${idOf(path)}.md is there already and is not overwritten; rename one of the two\n`,
    );
    return false;
  }
  const all = tables.map((table) => ({ ...table, ...looked.get(table.path)! }));
  const beside = all.filter(({ found }, at) => all.findIndex((other) => other.found!.kind === found!.kind) === at);
  for (const each of all.filter((other) => !beside.includes(other)))
    output.err(
      `${each.file} is not added to the run of data/${path}: it has a table of ${each.found!.kind} already, and takes one\n`,
    );
  const dated = (each: Inspection) => each.time !== null && each.time.axis.start !== null;
  const clock = beside.map(({ found, setting }) => clockOf(found!, setting)).find((each) => each !== undefined);
  const draft: Draft = {
    title: titleOf(stemOf(path)),
    log: path,
    inspection,
    setup,
    project,
    matches,
    load,
    name: first.name,
    inSetup,
    others: others.map((other) => ({
      name: other.name,
      log: other.path,
      inspection: other.inspection,
      matches: other.matches,
      dated: dated(inspection) && dated(other.inspection),
    })),
    tables: beside.flatMap(({ path: table, found, setting }) => tableLines(table, found!, setting, setup)),
    ...(clock === undefined ? {} : { clock }),
    ...(date === undefined ? {} : { date }),
  };
  if (write(root, id, draft, output)) ready?.(id);
  return true;
}

/** Writes the run of a setting that only tables have. */
export function addLogless(
  root: string,
  { tables }: Group,
  looked: ReadonlyMap<string, Looked>,
  { date, ready }: AddOptions,
  output: Output,
): boolean {
  const project = readProject(root);
  const setup = project.setups.length === 1 ? project.setups[0] : undefined;
  const beside = tables.map((table) => ({ ...table, ...looked.get(table.path)! }));
  const clock = beside.map(({ found, setting }) => clockOf(found!, setting)).find((each) => each !== undefined);
  const { path, setting } = beside[0]!;
  const name = `${stemOf(path)} ${setting}`;
  const id = freeId(root, `${dirname(path)}/${idFromWords(name)}`);
  if (id === undefined) {
    output.err(`the setting ${setting} of data/${path} is not added: content/runs/${idFromWords(name)}.md is there already\n`);
    return false;
  }
  const draft = {
    title: titleOf(name),
    setup,
    project,
    tables: beside.flatMap(({ path: table, found, setting: own }) => tableLines(table, found!, own, setup)),
    ...(clock === undefined ? {} : { clock }),
    ...(date === undefined ? {} : { date }),
  };
  const { text, toWrite, taken } = composeLogless(draft);
  if (writeRun(root, id, text, { toWrite, taken, rest: '' }, output)) ready?.(id);
  return true;
}

/** Channels of the setup that no earlier log of the run has. */
function free(setup: KnownSetup | undefined, taken: ReadonlySet<string>): KnownSetup['channels'] {
  return (setup?.channels ?? []).filter(({ name }) => !taken.has(name));
}
