/** Adds logs as runs: looks at each file, prints what it found, writes content/runs/<id>.md. Data is read, never moved or changed. */
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { readData } from '../../compute/project/read-data.ts';
import type { EdgeRows } from '../../figures/change-point.ts';
import { listed } from '../../figures/in-words.ts';
import { detectLoadEdge } from '../../figures/phases.ts';
import { type Inspection, inspect } from '../../intake/inspect.ts';
import type { Log } from '../../intake/log.ts';
import { read } from '../../intake/read.ts';
import { report } from '../../print/report.ts';
import type { Place } from '../../problem.ts';
import { idFromWords } from '../../register/values/names.ts';
import { locate } from './locate.ts';
import { type GivenNames, type Matches, matchColumns } from './match.ts';
import { type Project, readProject } from './project.ts';
import { composeRun, type Draft, isComplete } from './run-file.ts';
import { durationWords, showInspection } from './show.ts';

export interface Output {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

const USAGE = 'npm run add -- FILE…: name one or more logs below data/, such as data/larch-2/fast-soak.csv';

/** Adds all files; the exit code: 0 when every file is a run now, 1 when one is not. */
export function addFiles(root: string, files: readonly string[], output: Output): 0 | 1 {
  if (files.length === 0) {
    output.err(`${USAGE}\n`);
    return 1;
  }
  const given: GivenNames = new Map();
  const added = files.map((file) => addFile(root, file, given, output));
  return added.every((done) => done) ? 0 : 1;
}

function addFile(root: string, typed: string, given: GivenNames, output: Output): boolean {
  const located = locate(root, typed);
  if ('refused' in located) {
    output.err(`${located.refused}\n`);
    return false;
  }
  const project = readProject(root);
  const already = project.runs.find(({ text }) => namesLog(text, located.path));
  if (already) {
    output.out(`data/${located.path} is the log of content/runs/${already.id}.md already; nothing was written\n`);
    return true;
  }
  return addLog(root, located.path, project, given, output);
}

function namesLog(text: string, path: string): boolean {
  const pattern = path.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  return new RegExp(`^\\s*(?:log|file):\\s*["']?${pattern}["']?\\s*(?:#.*)?$`, 'm').test(text);
}

function addLog(root: string, path: string, project: Project, given: GivenNames, output: Output): boolean {
  const file = `data/${path}`;
  const bytes = readData(root, path, 'log', { file, line: 1, column: 1 });
  if (!(bytes instanceof Uint8Array)) {
    output.err(`${report(root, [bytes])}\n`);
    return false;
  }
  const inspection = inspect(bytes, file);
  const setup = project.setups.length === 1 ? project.setups[0] : undefined;
  const matches = matchColumns(inspection.columns, setup?.channels ?? [], given);
  const load = inspection.time ? loadOf(bytes, path, inspection, matches) : null;
  output.out(showInspection(inspection, matches.channels, load === null ? null : load.words));
  const shown = inspection.problems.filter(
    ({ severity, rule }) => severity === 'warning' || !rule.startsWith('time-') || rule === 'time-clock-unreadable',
  );
  if (shown.length > 0) output.err(`${report(root, shown)}\n`);
  const reason = whyNot(inspection);
  if (reason !== null) {
    output.err(`${file} is not added: ${reason}\n`);
    return false;
  }
  const id = freeId(root, path);
  if (id === undefined) {
    output.err(
      `${file} is not added: content/runs/${idOf(path)}.md is there already and is not overwritten; rename one of the two\n`,
    );
    return false;
  }
  write(root, id, { title: titleOf(path), log: path, inspection, setup, project, matches, load }, output);
  return true;
}

const OTHER_TABLE =
  'A table of scores or of surface readings is named in its run, as `scores` or `surface`; one of attempts in content/attempts/';

/** Errors that are about what a draft leaves to its author. */
const LEFT_TO_AUTHOR = /^(?:time-|date-order-|zone-|long-form)/;
/** What tables of results call their columns. */
const RESULTS = /^(?:test|value|better|spot|reading|outcome|score|result)s?$/i;

/** Why a file makes no run, or null. A table of scores has times and numbers too, but nothing that a bench logs. */
function whyNot({ problems, time, columns, leftOut, rows, several }: Inspection): string | null {
  const left = (rule: string) => LEFT_TO_AUTHOR.test(rule) && (rule !== 'long-form' || several !== undefined);
  if (problems.some(({ severity, rule }) => severity === 'error' && !left(rule))) return 'see above';
  if (rows === 0) return 'it has no row of readings';
  const names = [...columns, ...leftOut].map(({ column }) => column);
  if (names.filter((name) => RESULTS.test(name)).length > 1) return `its columns are those of a table of results. ${OTHER_TABLE}`;
  if (!time)
    return problems.some(({ rule }) => rule === 'time-clock-unreadable')
      ? 'see above'
      : `no column looks like a time. ${OTHER_TABLE}`;
  return columns.length === 0 ? 'no column besides the time holds numbers' : null;
}

function write(root: string, id: string, draft: Draft, output: Output): void {
  const { text, toWrite, taken } = composeRun(draft);
  const target = `content/runs/${id}.md`;
  mkdirSync(dirname(join(root, target)), { recursive: true });
  writeFileSync(join(root, target), text, { flag: 'wx' });
  const undecided = draft.matches.channels.filter((channel) => !isComplete(channel)).length;
  const units =
    undecided > 0
      ? ` ${undecided === 1 ? 'A column states' : `${undecided} columns state`} no unit: see the comments under channels.`
      : '';
  const rest = toWrite.length > 0 ? `to be written by you: ${toWrite.join(', ')}.` : 'ready for `npm run check`.';
  const only = taken.length > 0 ? ` Taken because there is only one, to be checked by you: ${taken.join(', ')}.` : '';
  output.out(`  wrote ${target}, ${rest}${only}${units}\n`);
}

interface Load {
  readonly from: number;
  readonly to: number | null;
  readonly end: number;
  readonly words: string;
}

/** The load's edges by the same method that `phases: auto` uses, on the columns whose unit is known. */
function loadOf(bytes: Uint8Array, path: string, inspection: Inspection, matches: Matches): Load | null {
  const log = provisionalLog(bytes, path, inspection, matches);
  const edges = log && log.rows > 2 ? detectLoadEdge(log) : null;
  if (!log || !edges) return null;
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

function provisionalLog(bytes: Uint8Array, path: string, inspection: Inspection, matches: Matches): Log | null {
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
  return idFromWords(basename(path, extname(path))) || 'run';
}

/** An id from the file's name, or with its folder's before it where that is taken. */
function freeId(root: string, path: string): string | undefined {
  const ids = [idOf(path), idFromWords(path.slice(0, path.length - extname(path).length))];
  return ids.find((id) => !existsSync(join(root, 'content', 'runs', `${id}.md`)));
}

function titleOf(path: string): string {
  const words = basename(path, extname(path)).replace(/[-_]+/g, ' ').trim() || 'Run';
  return words.charAt(0).toUpperCase() + words.slice(1);
}
