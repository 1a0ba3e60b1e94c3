/** A file that is to be added: what it looks like, and why it makes no run. */
import { readLogBytes } from '../../compute/project/read-data.ts';
import { type Inspection, inspect } from '../../intake/inspect.ts';
import type { LogBytes } from '../../intake/sheet/log-bytes.ts';
import { report } from '../../print/report.ts';
import { locate } from './locate.ts';
import type { Matches } from './match.ts';
import type { Output } from './output.ts';
import { readProject } from './project.ts';
import { showInspection } from './show.ts';
import { type FoundTable, tableOf } from './tables.ts';

/** A file that was looked at. */
export interface Looked {
  readonly path: string;
  readonly file: string;
  readonly bytes: LogBytes;
  readonly inspection: Inspection;
  readonly found: FoundTable | null;
}

/** Null where the file cannot be looked at, `done` where a run has it already. */
export function lookAt(root: string, typed: string, output: Output): Looked | 'done' | null {
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

/** Shows a log's columns with the channels found in them, and the problems that an author can do something about. */
export function tellLog(root: string, { inspection }: Looked, matches: Matches, load: string | null, output: Output): void {
  output.out(showInspection(inspection, matches.channels, load));
  const shown = inspection.problems.filter(
    ({ severity, rule }) => severity === 'warning' || !rule.startsWith('time-') || rule === 'time-clock-unreadable',
  );
  if (shown.length > 0) output.err(`${report(root, shown)}\n`);
}

/** Errors that are about what a draft leaves to its author. */
const LEFT_TO_AUTHOR = /^(?:time-|date-order-|zone-|long-form)/;

/** Why a file makes no run, or null. */
export function whyNot({ problems, time, columns, rows, several }: Inspection): string | null {
  const left = (rule: string) => LEFT_TO_AUTHOR.test(rule) && (rule !== 'long-form' || several !== undefined);
  if (problems.some(({ severity, rule }) => severity === 'error' && !left(rule))) return 'see above';
  if (rows === 0) return 'it has no row of readings';
  if (!time)
    return problems.some(({ rule }) => rule === 'time-clock-unreadable')
      ? 'see above'
      : 'no column looks like a time, and it does not look like a table of scores, surface readings or attempts. Where rows came at a fixed step, write the run with `every: 1 s` below `time:`';
  return columns.length === 0 ? 'no column besides the time holds numbers' : null;
}
