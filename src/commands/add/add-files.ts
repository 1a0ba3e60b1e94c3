/** Adds files to runs: looks at each, puts them together, prints what it found, writes content/runs/<id>.md and what the project lacks. Data is read, never moved or changed. */
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { readLogBytes } from '../../compute/project/read-data.ts';
import type { EdgeRows } from '../../figures/change-point.ts';
import { listed } from '../../figures/in-words.ts';
import { mappingLines } from '../../figures/mapping-lines.ts';
import { detectLoadEdge } from '../../figures/phases.ts';
import { type Inspection, inspect } from '../../intake/inspect.ts';
import type { Log } from '../../intake/log.ts';
import { read } from '../../intake/read.ts';
import type { LogBytes } from '../../intake/sheet/log-bytes.ts';
import { report } from '../../print/report.ts';
import type { Place } from '../../problem.ts';
import { idFromWords } from '../../register/values/names.ts';
import { writeAttempts, writeDevice, writeSetup } from './basis.ts';
import { endingOf, stemOf } from './ending.ts';
import { type Group, type Grouping, groupFiles, type NamedFile } from './group.ts';
import { locate } from './locate.ts';
import { type GivenNames, type Matches, matchColumns } from './match.ts';
import { type KnownSetup, readProject } from './project.ts';
import { composeLogless, composeRun, type Draft, isComplete, quoted, sharedChannelLines } from './run-file.ts';
import { durationWords, showInspection } from './show.ts';
import { type FoundTable, tableOf } from './tables.ts';

export interface Output {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

const USAGE = 'npm run add -- FILE…: name one or more files below data/, such as data/larch-2/fast-soak.csv';

/** How files are put into runs: as proposed, each log its own run, all in one. */
export type Choice = 'proposed' | 'apart' | 'together';

export interface AddOptions {
  readonly choice?: Choice;
  /** Day of the test, where no log states it. */
  readonly date?: string;
  /** Asks how the files belong together; undefined where nobody can answer. `null` ends without writing. */
  readonly ask?: (question: string) => Choice | null;
  /** Hears of each run that is written and leaves nothing to be written. */
  readonly ready?: (run: string) => void;
}

/** A file that was looked at. */
interface Looked {
  readonly path: string;
  readonly file: string;
  readonly bytes: LogBytes;
  readonly inspection: Inspection;
  readonly found: FoundTable | null;
}

/** Adds all files; the exit code: 0 when every file is part of a run now, 1 when one is not. */
export function addFiles(root: string, files: readonly string[], output: Output, options: AddOptions = {}): 0 | 1 {
  if (files.length === 0) {
    output.err(`${USAGE}\n`);
    return 1;
  }
  const looks = files.map((file) => lookAt(root, file, output));
  const looked = looks.filter((each) => each !== 'done' && each !== null);
  const usable = looked.filter((each) => each.found !== null || whyNot(each.inspection) === null);
  for (const each of looked.filter((other) => !usable.includes(other))) {
    tellLog(root, each, { channels: [], absent: [], open: [] }, null, output);
    output.err(`${each.file} is not added: ${whyNot(each.inspection)}\n`);
  }
  const added = usable.length === 0 || addRuns(root, usable, output, options);
  return looks.includes(null) || usable.length < looked.length || !added ? 1 : 0;
}

/** Null where the file cannot be looked at, `done` where a run has it already. */
function lookAt(root: string, typed: string, output: Output): Looked | 'done' | null {
  const located = locate(root, typed);
  if ('refused' in located) {
    output.err(`${located.refused}\n`);
    return null;
  }
  const { path } = located;
  const project = readProject(root);
  const already = project.runs.find(({ text }) => namesFile(text, path));
  if (already) {
    output.out(`data/${path} is the log of content/runs/${already.id}.md already; nothing was written\n`);
    return 'done';
  }
  const file = `data/${path}`;
  const bytes = readLogBytes(root, path, { file, line: 1, column: 1 });
  if ('found' in bytes) {
    output.err(`${report(root, [bytes])}\n`);
    return null;
  }
  const inspection = inspect(bytes, file);
  const setup = project.setups.length === 1 ? project.setups[0] : undefined;
  const shared = { scores: setup?.tables.scores?.mapping, surface: setup?.tables.surface?.mapping };
  return { path, file, bytes, inspection, found: bytes instanceof Uint8Array ? tableOf(bytes, file, inspection, shared) : null };
}

function namesFile(text: string, path: string): boolean {
  const pattern = path.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  return new RegExp(`^\\s*[\\w-]+:\\s*["']?${pattern}["']?\\s*(?:#.*)?$`, 'm').test(text);
}

/** Puts files into runs, writes what the project lacks, then run after run. */
function addRuns(root: string, looked: readonly Looked[], output: Output, options: AddOptions): boolean {
  const { choice = 'proposed', ask } = options;
  const logs = looked.filter(({ found }) => found === null);
  const tables = looked.filter(({ found }) => found !== null && found.kind !== 'attempts');
  const attempts = looked.filter(({ found }) => found?.kind === 'attempts');
  const grouped = (by: Choice) => groupFiles(logs.map(namedLog), tables.map(namedTable), by);
  let grouping = grouped(choice);
  if (looked.length > 1) {
    output.out(groupingText(grouping));
    if (ask && logs.length > 1) {
      const answer = ask(
        'Write these? Enter: yes; a: each log is a run of its own; t: all together are one run; q: write nothing. ',
      );
      if (answer === null) return false;
      if (answer !== choice) grouping = grouped(answer);
    }
  }
  const given: GivenNames = new Map();
  const inSetup = writeBasis(root, looked, grouping, output);
  const pathed = new Map(looked.map((each) => [each.path, each]));
  const done = grouping.groups.map((group) =>
    group.logs.length === 0
      ? addLogless(root, group, pathed, options, output)
      : addRun(root, group, pathed, { given, inSetup }, options, output),
  );
  const tried = attempts.map((each) => addAttempts(root, each, output));
  const alone = grouping.groups.length === 0 ? tables : tables.filter(({ path }) => grouping.left.includes(path));
  for (const each of alone) output.err(`${each.file} is not added: ${ofWhichRun(each)}\n`);
  return [...done, ...tried].every((each) => each) && alone.length === 0;
}

function ofWhichRun({ path, found }: Looked): string {
  const lines = tableLines(path, found!, found!.proposed.settings[0]);
  return `no name and no setting tells of which run it is. Put these lines into that run's file:\n${lines.join('\n')}`;
}

function namedLog({ path, inspection }: Looked): NamedFile {
  const axis = inspection.time?.axis;
  if (!axis || axis.start === null) return { path };
  return { path, span: [axis.start, axis.start + (axis.seconds[axis.seconds.length - 1] ?? 0)] };
}

function namedTable({ path, found }: Looked): NamedFile {
  return { path, settings: found!.proposed.settings };
}

function groupingText({ groups, left }: Grouping): string {
  const lines = groups.map(({ logs, tables, why }, at) => {
    const beside = tables.map(({ path, setting }) => `${path}${setting === undefined ? '' : ` (${setting})`}`);
    return `  run ${at + 1}: ${[...logs, ...beside].join(', ')}${why === '' ? '' : ` (${why})`}`;
  });
  const rest = left.length > 0 ? [`  of no run that can be told: ${left.join(', ')}`] : [];
  return `${['Runs, as these files seem to belong together:', ...lines, ...rest, '  Other: --apart makes each log a run of its own, --together makes one run of all.'].join('\n')}\n`;
}

/** A device and a setup, where there are none and several files come at once; the columns whose units it leaves open. */
function writeBasis(root: string, looked: readonly Looked[], { groups }: Grouping, output: Output): ReadonlySet<string> {
  const project = readProject(root);
  const [first] = looked;
  if (!first || looked.length < 2 || project.setups.length > 0 || project.devices.length > 0) return new Set();
  const shared = (['scores', 'surface'] as const).flatMap((kind) => {
    const own = looked.filter(({ found }) => found?.kind === kind);
    return own[0] && groups.length > 1 ? sharedLines(own) : [];
  });
  const taken = new Set<string>();
  const pathed = new Map(looked.map((each) => [each.path, each]));
  const channels = (groups.length > 1 ? firstFirst(groups[0]!.logs, pathed) : []).flatMap((path) => {
    const { inspection } = pathed.get(path)!;
    const own = matchColumns(inspection.columns, [], new Map(), taken).channels;
    for (const { name } of own) taken.add(name);
    return own;
  });
  const lines = [...(channels.length > 0 ? sharedChannelLines({ channels, absent: [], open: [] }) : []), ...shared];
  for (const { file, look } of [writeDevice(root, first.path), writeSetup(root, first.path, lines)])
    output.out(`  wrote ${file}; look at its ${look}\n`);
  return new Set(channels.filter((channel) => !isComplete(channel)).map(({ column }) => column.column));
}

/** What is said of the tables of one kind once: all but whose rows. Of several files each run names its own. */
function sharedLines(tables: readonly Looked[]): string[] {
  const [first] = tables;
  const { kind, proposed } = first!.found!;
  const { rows: _, ...mapping } = proposed.mapping;
  const lines = mappingLines({ ...proposed, mapping });
  const file = tables.length === 1 ? [`  file: ${first!.path}`] : [];
  return file.length + lines.length === 0 ? [] : [`${KEYS[kind]}:`, ...file, ...lines.map((line) => `  ${line}`)];
}

const KEYS = { scores: 'scores', surface: 'surface', attempts: 'table' } as const;

/** A table as lines of front matter; what the setup says of it is left out. */
function tableLines(path: string, { kind, proposed }: FoundTable, setting: string | undefined, setup?: KnownSetup): string[] {
  const key = KEYS[kind];
  const shared = kind === 'attempts' ? undefined : setup?.tables[kind];
  const { rows, ...mapping } = proposed.mapping;
  const row = rows && setting !== undefined ? { rows: { ...rows, value: setting } } : {};
  const lines = mappingLines(
    shared ? { ...proposed, mapping: row, openTests: [], openWords: [] } : { ...proposed, mapping: { ...mapping, ...row } },
  );
  const file = shared?.file === path ? [] : [`file: ${quoted(path)}`];
  if (lines.length === 0 && file.length > 0) return [`${key}: ${quoted(path)}`];
  return [`${key}:`, ...[...file, ...lines].map((line) => `  ${line}`)];
}

interface Shared {
  readonly given: GivenNames;
  /** Columns without a unit that stand, as comments, in a setup that was just written. */
  readonly inSetup: ReadonlySet<string>;
}

/** Finds a run's channels, shows its files, and writes it. */
function addRun(
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
function addLogless(
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

/** The log whose clock the run has comes first: one that tells the day, and of those the one with the most columns. */
function firstFirst(paths: readonly string[], looked: ReadonlyMap<string, Looked>): string[] {
  const weight = (path: string) => {
    const { time, columns } = looked.get(path)!.inspection;
    return (time?.date === undefined ? 0 : 2000) + (time?.certain ? 1000 : 0) + columns.length;
  };
  return [...paths].sort((a, b) => weight(b) - weight(a));
}

/** Channels of the setup that no earlier log of the run has. */
function free(setup: KnownSetup | undefined, taken: ReadonlySet<string>): KnownSetup['channels'] {
  return (setup?.channels ?? []).filter(({ name }) => !taken.has(name));
}

/** Names of a run's logs: the word of the file's name that the others lack. */
function distinctNames(paths: readonly string[]): string[] {
  const all = paths.map((path) => idOf(path).split('-'));
  return all.map((words, at) => {
    const own = words.filter((word) => all.every((other, k) => k === at || !other.includes(word)));
    const name = own.join('_').replace(/^(?=\d)/, 'log_');
    return name === '' ? `log_${at + 1}` : name;
  });
}

/** The clock that a table's column of settings states, with its unit. */
function clockOf({ proposed }: FoundTable, setting: string | undefined): string | undefined {
  const { rows } = proposed.mapping;
  if (!rows || setting === undefined || !/clock|freq/i.test(rows.column)) return undefined;
  if (/^\d+(?:\.\d+)?\s*[MG]Hz$/i.test(setting)) return setting;
  const unit = /\b([MG]Hz)\b/i.exec(rows.column)?.[1];
  return unit !== undefined && /^\d+(?:\.\d+)?$/.test(setting) ? `${setting} ${unit}` : undefined;
}

/** Whether the file is in the project now, or its lines were printed to be put there. */
function addAttempts(root: string, { path, file, found }: Looked, output: Output): boolean {
  const project = readProject(root);
  const device = project.devices[0];
  const specimen = project.specimens[0] ?? 'no-1';
  const lines = tableLines(path, found!, undefined);
  if (device === undefined || project.devices.length > 1) {
    output.out(`${file} is a table of attempts: name it in content/attempts/<id>.md with these lines\n${lines.join('\n')}\n`);
    return true;
  }
  const id = idOf(path);
  if (existsSync(join(root, 'content', 'attempts', `${id}.md`))) {
    output.err(`${file} is not added: content/attempts/${id}.md is there already and is not overwritten\n`);
    return false;
  }
  const written = writeAttempts(root, id, device, specimen, lines);
  output.out(`${file}: a table of attempts\n  wrote ${written.file}; look at ${written.look}\n`);
  return true;
}

function tellLog(root: string, { inspection }: Looked, matches: Matches, load: string | null, output: Output): void {
  output.out(showInspection(inspection, matches.channels, load));
  const shown = inspection.problems.filter(
    ({ severity, rule }) => severity === 'warning' || !rule.startsWith('time-') || rule === 'time-clock-unreadable',
  );
  if (shown.length > 0) output.err(`${report(root, shown)}\n`);
}

/** Errors that are about what a draft leaves to its author. */
const LEFT_TO_AUTHOR = /^(?:time-|date-order-|zone-|long-form)/;

/** Why a file makes no run, or null. */
function whyNot({ problems, time, columns, rows, several }: Inspection): string | null {
  const left = (rule: string) => LEFT_TO_AUTHOR.test(rule) && (rule !== 'long-form' || several !== undefined);
  if (problems.some(({ severity, rule }) => severity === 'error' && !left(rule))) return 'see above';
  if (rows === 0) return 'it has no row of readings';
  if (!time)
    return problems.some(({ rule }) => rule === 'time-clock-unreadable')
      ? 'see above'
      : 'no column looks like a time, and it does not look like a table of scores, surface readings or attempts. Where rows came at a fixed step, write the run with `every: 1 s` below `time:`';
  return columns.length === 0 ? 'no column besides the time holds numbers' : null;
}

/** Whether nothing is left to be written. */
function write(root: string, id: string, draft: Draft, output: Output): boolean {
  const { text, toWrite, taken } = composeRun(draft);
  const undecided = draft.matches.channels.filter((channel) => !isComplete(channel)).length;
  const units =
    undecided > 0
      ? ` ${undecided === 1 ? 'A column states' : `${undecided} columns state`} no unit: see the comments under channels.`
      : '';
  return writeRun(root, id, text, { toWrite, taken, rest: units }, output);
}

function writeRun(
  root: string,
  id: string,
  text: string,
  { toWrite, taken, rest }: { readonly toWrite: readonly string[]; readonly taken: readonly string[]; readonly rest: string },
  output: Output,
): boolean {
  const target = `content/runs/${id}.md`;
  mkdirSync(dirname(join(root, target)), { recursive: true });
  writeFileSync(join(root, target), text, { flag: 'wx' });
  const left = toWrite.length > 0 ? `to be written by you: ${toWrite.join(', ')}.` : 'ready for `npm run check`.';
  const only = taken.length > 0 ? ` Taken because there is only one, to be checked by you: ${taken.join(', ')}.` : '';
  output.out(`  wrote ${target}, ${left}${only}${rest}\n`);
  return toWrite.length === 0;
}

interface Load {
  readonly from: number;
  readonly to: number | null;
  readonly end: number;
  readonly words: string;
}

/** The load's edges by the same method that `phases: auto` uses, on the columns whose unit is known; in words alone where the log does not tell them. */
function loadOf(bytes: LogBytes, path: string, inspection: Inspection, matches: Matches): Load | string | null {
  const log = provisionalLog(bytes, path, inspection, matches);
  const edges = log && log.rows > 2 ? detectLoadEdge(log) : null;
  if (!log || !edges) return null;
  if (typeof edges === 'string') return edges;
  const { seconds } = log.time;
  const [{ startRow, endRow }, ...others] = edges.loads as readonly [EdgeRows, ...EdgeRows[]];
  const from = seconds[startRow]!;
  const to = endRow < log.rows ? seconds[endRow]! : null;
  const end = seconds[log.rows - 1]!;
  const until = to === null ? 'the end' : durationWords(to);
  return {
    from,
    to,
    end,
    words: `load: from ${durationWords(from)} to ${until}, by ${edges.method}, on ${edges.channel}${furtherWords(others, seconds)}`,
  };
}

/** Loads after the first are named, so that the author can declare them. */
function furtherWords(others: readonly EdgeRows[], seconds: Float64Array): string {
  if (others.length === 0) return '';
  const starts = others.map(({ startRow }) => durationWords(seconds[startRow]!));
  return `; ${others.length === 1 ? 'another load begins' : 'more loads begin'} at ${listed(starts)}`;
}

function provisionalLog(bytes: LogBytes, path: string, inspection: Inspection, matches: Matches): Log | null {
  const place: Place = { file: `data/${path}`, line: 1, column: 1 };
  const { time, problems } = inspection;
  if (!time) return null;
  const unit = problems.some(({ rule }) => rule === 'time-unit-missing') ? { format: 'elapsed' as const, unit: 's' } : {};
  const channels = matches.channels.filter(isComplete).map(({ name, quantity, column, inherited }) => ({
    name,
    quantity,
    column: column.column,
    place,
    ...(inherited?.unit === undefined ? {} : { unit: inherited.unit }),
  }));
  return read(bytes, { file: path, channels, repairs: [], place, time: { column: time.column, ...unit } }, place.file).log;
}

function idOf(path: string): string {
  return idFromWords(stemOf(path)) || 'run';
}

/** An id from the file's name, or with its folder's before it where that is taken. */
function freeId(root: string, path: string): string | undefined {
  const ids = [idOf(path), idFromWords(path.slice(0, path.length - endingOf(path).length))];
  return ids.find((id) => !existsSync(join(root, 'content', 'runs', `${id}.md`)));
}

/** A title of words from a file's name, without its folders and its ending: a point or a stroke in them belongs to them. */
function titleOf(name: string): string {
  const words = name.replace(/[-_]+/g, ' ').trim() || 'Run';
  return words.charAt(0).toUpperCase() + words.slice(1);
}
