/** CSV bytes → Log → figures, for one run. */
import type { RunContext } from '../../../figures/context.ts';
import { correctedLog } from '../../../figures/corrected.ts';
import { derive } from '../../../figures/derive.ts';
import type { RunFigures } from '../../../figures/figure.ts';
import type { Channel, Log, LogDeclaration } from '../../../intake/log.ts';
import { read } from '../../../intake/read.ts';
import type { Problem } from '../../../problem.ts';
import type { Sharing } from '../../../register/register.ts';
import { readData } from '../../project/read-data.ts';
import { digest } from '../../store/digest.ts';
import { changed } from '../../store/momentary-problems.ts';
import type { Store } from '../../store/store.ts';
import { edgeWarnings } from './edge-warnings.ts';
import { flagWarnings } from './flag-warnings.ts';
import { rangeWarnings } from './range-warnings.ts';
import { keepRunData, type RunData } from './run-data.ts';
import { type ReadTable, readTables, type TablePaths } from './run-tables.ts';

export interface RunTask {
  readonly step: 'run';
  readonly key: string;
  readonly declaration: LogDeclaration;
  readonly context: RunContext;
  /** How the log goes out, as far as the author says it. */
  readonly sharing?: Sharing;
  /** Tables beside the log. */
  readonly tables: TablePaths;
  /** Digests that the key was made with, by path below data/. */
  readonly digests: Readonly<Record<string, string>>;
}

/** A log without its columns: what pages say of it. */
export interface LogSummary extends Omit<Log, 'lines' | 'time' | 'channels'> {
  readonly sha256: string;
  readonly span: number;
  readonly time: Omit<Log['time'], 'seconds'>;
  readonly channels: readonly Omit<Channel, 'values'>[];
}

export interface RunResult {
  /** Null where the log could not be used; `problems` then says why. */
  readonly derived: RunFigures | null;
  readonly summary: LogSummary | null;
  /** Key of the stored Log, its readings corrected. */
  readonly log: string | null;
  /** What goes out of the log. */
  readonly data: RunData | null;
  /** What was read beside the log. */
  readonly tables: readonly ReadTable[];
  readonly problems: readonly Problem[];
}

/** Reads and derives one run, stores the Log beside, and never throws on what a file holds. */
export function runStep(root: string, store: Store, task: RunTask): RunResult {
  const file = `data/${task.declaration.file}`;
  const bytes = readData(root, task.declaration.file, 'log', task.declaration.place);
  if (!(bytes instanceof Uint8Array)) return failed([bytes]);
  if (digest(bytes) !== task.digests[task.declaration.file]) return failed([changed(file, task.declaration.place)]);
  const { log: asRead, unread, problems } = read(bytes, task.declaration, file);
  if (asRead === null || unread === null) return failed(problems);
  const kept = keepRunData(root, store, task, { bytes, log: asRead, unread });
  const log = correctedLog(asRead, task.context);
  const logKey = `${task.key}-log`;
  store.set(logKey, log);
  const beside = readTables(root, store, task);
  const derived = derive(log, task.context, beside.tables);
  const edges = edgeWarnings(log, task);
  return {
    derived,
    summary: summarise({ ...log, ...(edges.known && { known: edges.known }) }, digest(bytes)),
    log: logKey,
    data: kept.data,
    tables: beside.read,
    problems: [
      ...problems,
      ...kept.problems,
      ...beside.problems,
      ...edges.problems,
      ...rangeWarnings(derived, task),
      ...flagWarnings(derived, task),
    ],
  };
}

/** A run of which nothing could be computed, and why. */
export function failed(problems: readonly Problem[]): RunResult {
  return { derived: null, summary: null, log: null, data: null, tables: [], problems };
}

function summarise(log: Log, sha256: string): LogSummary {
  const { lines: _lines, time, channels, ...rest } = log;
  const { seconds, ...axis } = time;
  return {
    ...rest,
    sha256,
    span: seconds[seconds.length - 1] ?? 0,
    time: axis,
    channels: channels.map(({ values: _values, ...channel }) => channel),
  };
}
