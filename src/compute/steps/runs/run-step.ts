/** CSV bytes → Log → figures, for one run. */
import type { Alignment } from '../../../figures/alignment/align.ts';
import { type AlignedLog, deriveJoined } from '../../../figures/alignment/derive-joined.ts';
import type { RunContext } from '../../../figures/context.ts';
import { correctedLog } from '../../../figures/corrected.ts';
import { isPresent, type RunFigures } from '../../../figures/figure.ts';
import { assignChannels } from '../../../intake/assign.ts';
import type { Channel, ChannelDeclaration, Log } from '../../../intake/log.ts';
import { read } from '../../../intake/read.ts';
import { unreachedPhases } from '../../../intake/report/phase-starts.ts';
import type { Unread } from '../../../intake/rows/unread.ts';
import type { LogBytes } from '../../../intake/sheet/log-bytes.ts';
import type { Problem } from '../../../problem.ts';
import type { RunLog } from '../../../register/register.ts';
import { digestNow, readLogBytes, sizeOfData } from '../../project/read-data.ts';
import { digest } from '../../store/digest.ts';
import { changed } from '../../store/momentary-problems.ts';
import type { Store } from '../../store/store.ts';
import { freeMemory } from '../free-memory.ts';
import { alignLogs } from './align-logs.ts';
import { edgeWarnings } from './edge-warnings.ts';
import { flagWarnings } from './flag-warnings.ts';
import { rangeWarnings } from './range-warnings.ts';
import { keepLogData, type LogData } from './run-data.ts';
import { type ReadTable, readTables, type TablePaths } from './run-tables.ts';

export interface RunTask {
  readonly step: 'run';
  readonly key: string;
  readonly run: string;
  readonly logs: readonly RunLog[];
  /** Of all logs, in declared order. */
  readonly channels: readonly ChannelDeclaration[];
  readonly context: RunContext;
  /** Tables beside the logs. */
  readonly tables: TablePaths;
  /** Digests that the key was made with, by path below data/. */
  readonly digests: Readonly<Record<string, string>>;
}

/** A channel without its readings. */
export type ChannelFacts = Omit<Channel, 'values'>;

/** A log without its columns: what pages say of it. */
export interface LogSummary extends Omit<Log, 'lines' | 'time' | 'channels' | 'joined'> {
  /** '' where it is the run's only one. */
  readonly name: string;
  readonly sha256: string;
  readonly span: number;
  readonly time: Omit<Log['time'], 'seconds'>;
  readonly channels: readonly ChannelFacts[];
  /** When its first row stands on the run's clock, s, and how sure that is; null of the first. */
  readonly alignment: Alignment | null;
  /** Rows before the run's clock begins, which are left out. */
  readonly before: number;
}

/** The logs of a run, and what they come to together. */
export interface RunSummary {
  /** In the author's order; none where the run has no log. */
  readonly logs: readonly LogSummary[];
  /** In declared order. */
  readonly channels: readonly ChannelFacts[];
  /** By address: the stretch that a figure was made from, s on the run's clock. */
  readonly windows: Readonly<Record<string, readonly [from: number, to: number]>>;
}

export interface RunResult {
  /** Null where a log could not be used; `problems` then says why. */
  readonly derived: RunFigures | null;
  readonly summary: RunSummary | null;
  /** Key of the stored Log, all logs joined, its readings corrected. */
  readonly log: string | null;
  /** What goes out of each log. */
  readonly data: readonly LogData[] | null;
  /** What was read beside the logs. */
  readonly tables: readonly ReadTable[];
  readonly problems: readonly Problem[];
}

/** A log as it was read, before any correction. */
interface LogAsRead {
  readonly run: RunLog;
  readonly bytes: LogBytes;
  /** Of the file. */
  readonly size: number;
  readonly sha256: string;
  readonly log: Log;
  readonly unread: Unread;
}

/** Under it the surface readings of a run with a thermal image are stored. */
export function surfaceKey({ key }: Pick<RunTask, 'key'>): string {
  return `${key}-surface`;
}

/** Reads and derives one run, stores the Log beside, and never throws on what a file holds. */
export function runStep(root: string, store: Store, task: RunTask): RunResult {
  const { logs, problems } = readLogs(root, task);
  if (logs === null) return failed(problems);
  if (logs.some(({ log }) => log.condensed)) freeMemory();
  const kept = logs.map((each) => keepLogData(root, store, task, each));
  const { aligned, problems: ofClocks } = alignLogs(logs.map(({ run, log }) => ({ run, log: correctedLog(log, task.context) })));
  if (aligned === null) return failed([...problems, ...kept.flatMap((each) => each.problems), ...ofClocks]);
  const beside = readTables(root, store, task);
  const order = task.channels.map(({ name }) => name);
  const { log, derived } = deriveJoined(aligned, order, task.context, beside.tables);
  const logKey = `${task.key}-log`;
  store.set(logKey, log);
  const { surface } = beside.tables;
  if (surface?.image) store.set(surfaceKey(task), surface);
  const edges = log.rows === 0 ? { known: undefined, problems: [] } : edgeWarnings(log, task);
  return {
    derived,
    summary: {
      logs: aligned.map((each, index) => summarise(each, logs[index]!, index === 0 ? edges.known : undefined)),
      channels: log.channels.map(withoutValues),
      windows: windowsOf(aligned, derived),
    },
    log: logKey,
    data: kept.map(({ data }) => data),
    tables: beside.read,
    problems: [
      ...problems,
      ...kept.flatMap((each) => each.problems),
      ...ofClocks,
      ...beside.problems,
      ...edges.problems,
      ...(logs.length > 1 ? unreachedPhases(task.logs[0]!.declaration, log.time) : []),
      ...rangeWarnings(derived, task),
      ...flagWarnings(derived, task),
    ],
  };
}

/** All logs of a run; null, with the problems of all of them, where one cannot be read. */
function readLogs(root: string, { logs, digests }: RunTask): { logs: readonly LogAsRead[] | null; problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const opened = logs.flatMap((run) => {
    const { file, place } = run.declaration;
    const bytes = readLogBytes(root, file, place);
    if ('found' in bytes) problems.push(bytes);
    else if (bytes instanceof Uint8Array && digest(bytes) !== digests[file]) problems.push(changed(`data/${file}`, place));
    else return [{ run, name: run.name, declaration: run.declaration, file: `data/${file}`, bytes }];
    return [];
  });
  if (opened.length < logs.length) return { logs: null, problems };
  const assigned = assignChannels(opened);
  problems.push(...assigned.problems);
  const found = opened.flatMap(({ run, bytes, file }, index): LogAsRead[] => {
    const declaration = assigned.declarations[index]!;
    const { log, unread, problems: own } = read(bytes, declaration, file);
    // A long log is read piece by piece: only its digest afterwards shows that it was the same all the while.
    if (!(bytes instanceof Uint8Array) && digestNow(root, declaration.file) !== digests[declaration.file]) {
      problems.push(changed(file, declaration.place));
      return [];
    }
    problems.push(...own);
    if (!log || !unread) return [];
    const size = bytes instanceof Uint8Array ? bytes.length : sizeOfData(root, declaration.file);
    return [{ run: { ...run, declaration }, bytes, size, sha256: digests[declaration.file]!, log, unread }];
  });
  return { logs: found.length < logs.length || assigned.problems.length > 0 ? null : found, problems };
}

/** A run of which nothing could be computed, and why. */
export function failed(problems: readonly Problem[]): RunResult {
  return { derived: null, summary: null, log: null, data: null, tables: [], problems };
}

/** Of figures of a log, not of tables beside it. */
function windowsOf(logs: readonly AlignedLog[], { figures }: RunFigures): RunSummary['windows'] {
  const found = [...figures].flatMap(([address, figure]) => {
    if (!isPresent(figure) || figure.from.rows === null) return [];
    const { file } = figure.from;
    const of = logs.find(({ log }, index) => (file === undefined ? index === 0 : `data/${log.file}` === file));
    if (!of) return [];
    const [first, last] = figure.from.rows;
    const at = of.alignment?.at ?? 0;
    return [[address, [at + secondsAt(of.log, first), at + secondsAt(of.log, last)] as const] as const];
  });
  return Object.fromEntries(found);
}

function secondsAt({ lines, time }: Log, line: number): number {
  const row = lines.findLastIndex((each) => each <= line);
  return time.seconds[Math.max(0, row)] ?? 0;
}

/** @param known - what is known of the run's phases too, put on its logs. */
function summarise({ name, log, alignment }: AlignedLog, { sha256 }: LogAsRead, known: Log['known']): LogSummary {
  const { lines: _lines, time, channels, joined: _joined, ...rest } = log;
  const { seconds, ...axis } = time;
  return {
    ...rest,
    ...(known && { known }),
    name,
    sha256,
    span: seconds[seconds.length - 1] ?? 0,
    time: axis,
    channels: channels.map(withoutValues),
    alignment,
    before: alignment === null ? 0 : seconds.filter((second) => second + alignment.at < 0).length,
  };
}

function withoutValues({ values: _values, ...channel }: Channel): ChannelFacts {
  return channel;
}
