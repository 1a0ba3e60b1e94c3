/** Phases of a run: declared ones put on the log's rows, or the load edge found by a named method. */
import type { Channel, Inference, Log } from '../intake/log.ts';
import { findEdges, type LoadEdges } from './change-point.ts';
import type { DeclaredPhase, RunContext } from './context.ts';
import type { Phase } from './figure.ts';
import { duration, listed } from './in-words.ts';
import { readingsOf } from './readings.ts';

export interface Phases {
  readonly phases: readonly Phase[];
  readonly inferences: readonly Inference[];
  /** Why there is no phase, where an edge of a load was seen and not told. */
  readonly untold?: string;
}

/** The run's phases on the rows of its log. */
export function phasesOf(log: Log, context: RunContext): Phases {
  if (log.channels.length === 0 && log.rows === 0) return { phases: [], inferences: [] };
  if (context.phases === 'auto') return detectPhases(log);
  return { phases: declaredPhases(log, context.phases), inferences: [] };
}

/**
 * Declared phases as row ranges: half open, the one that ends last closed where no row follows its end. Infinity runs to the end of the log, and so does an
 * end that lies more than a step behind it: a phase lasts as long as there are rows. One that begins after the last row has none. Overlaps are the register's to report.
 */
export function declaredPhases(log: Log, declared: readonly DeclaredPhase[]): readonly Phase[] {
  const { seconds } = log.time;
  const end = seconds[log.rows - 1] ?? 0;
  const last = declared.reduce<DeclaredPhase | null>(
    (latest, phase) => (latest && endsLater(latest, phase) ? latest : phase),
    null,
  );
  return declared.map((phase) => {
    const { name, from, to } = phase;
    const fromRow = firstRowAt(seconds, from);
    const after = firstRowAfter(seconds, to);
    // Where rows follow, the row at the end is the first of what comes after.
    const toRow = phase === last && after === log.rows ? after : firstRowAt(seconds, to);
    return {
      name,
      from,
      to: from <= end && to > end + (log.time.step ?? 0) ? end : Number.isFinite(to) ? to : from,
      fromRow,
      toRow: Math.max(fromRow, toRow),
      inferred: false,
    };
  });
}

function endsLater(a: DeclaredPhase, b: DeclaredPhase): boolean {
  return a.to > b.to || (a.to === b.to && a.from > b.from);
}

/** The edges of the loads as found in the log; a sentence where one lies in a gap of it; null when no channel shows one. For tools that propose phases. */
export function detectLoadEdge(log: Log): LoadEdges | string | null {
  const edges = findEdges(log);
  return edges && (edgeInGap(log, edges) ?? edges);
}

/** Why the log does not tell where a load begins or ends, though it shows one; null where it does. */
function edgeInGap(log: Log, edges: LoadEdges): string | null {
  const { seconds } = log.time;
  const { t, holes } = readingsOf(log, channelOf(log, edges).values, { from: 0, to: log.rows });
  const gaps = holes.map((hole) => ({ from: t[hole - 1]!, to: t[hole]! })).filter(({ from, to }) => to - from > edges.sharpness);
  const rows = edges.loads.flatMap(({ startRow, endRow }) => [['begins', startRow] as const, ['ends', endRow] as const]);
  for (const [does, row] of rows) {
    const gap = gaps.find(({ from, to }) => row > 0 && row < log.rows && seconds[row]! > from && seconds[row]! <= to);
    if (gap)
      return `A load ${does} in a gap of the log, between ${duration(gap.from)} and ${duration(gap.to)} after its first row, by the channel ${edges.channel}. Declare the phases, if you know when it did.`;
  }
  return null;
}

function channelOf({ channels }: Log, { channel }: LoadEdges): Channel {
  return channels.find(({ name }) => name === channel)!;
}

/** Names of inferred phases: those of the first load, and of further ones with their number. */
const IDLE = 'idle';
const LOAD = 'load';
const PAUSE = 'pause';
export const COOL_DOWN = 'cool-down';
/** Names that inferred phases may have, numbers aside. */
export const INFERRED_NAMES: readonly string[] = [IDLE, LOAD, PAUSE, COOL_DOWN];

const numbered = (name: string, k: number) => (k === 0 ? name : `${name}-${k + 1}`);

/**
 * Idle, load and cool-down by the inferred edges. Where there are several loads: idle, load, pause, load-2, pause-2, load-3 … cool-down.
 * None, and a sentence that says so, when no channel shows a load, or when one begins or ends in a gap.
 */
export function detectPhases(log: Log): Phases {
  const edges = findEdges(log);
  if (!edges)
    return { phases: [], inferences: [{ method: 'load-edge', statement: 'No channel of the log shows where a load begins.' }] };
  const untold = edgeInGap(log, edges);
  if (untold !== null) return { phases: [], inferences: [{ method: 'load-edge', statement: untold }], untold };
  const { seconds } = log.time;
  const between = (name: string, fromRow: number, toRow: number): Phase => ({
    name,
    from: seconds[fromRow]!,
    to: seconds[Math.min(toRow, log.rows - 1)]!,
    fromRow,
    toRow,
    inferred: true,
    ...(edges.bends ? { sharpness: edges.sharpness } : {}),
  });
  const { loads } = edges;
  const phases = [
    between(IDLE, 0, loads[0]!.startRow),
    ...loads.flatMap(({ startRow, endRow }, k) => [
      between(numbered(LOAD, k), startRow, endRow),
      k + 1 < loads.length ? between(numbered(PAUSE, k), endRow, loads[k + 1]!.startRow) : between(COOL_DOWN, endRow, log.rows),
    ]),
  ].filter((phase) => phase.toRow > phase.fromRow);
  return { phases, inferences: [{ method: 'load-edge', statement: statementOf(edges, log) }] };
}

function statementOf({ loads, method, channel }: LoadEdges, log: Log): string {
  const { seconds } = log.time;
  const stretches = loads.map(({ startRow, endRow }, k) => {
    const to = endRow < log.rows ? duration(seconds[endRow]!) : 'the end of the log';
    return `${numbered(LOAD, k)} from ${duration(seconds[startRow]!)} to ${to}`;
  });
  const several = loads.length > 1 ? ` There are ${loads.length} loads: figures of the load are those of the first.` : '';
  return `Phases were inferred: ${listed(stretches)}, by ${method} on the channel ${channel}.${several}`;
}

/** Index of the first row at or after `time`; binary search. */
export function firstRowAt(seconds: Float64Array, time: number): number {
  let low = 0;
  let high = seconds.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (seconds[middle]! < time) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Index of the first row after `time`; binary search. */
export function firstRowAfter(seconds: Float64Array, time: number): number {
  let low = 0;
  let high = seconds.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (seconds[middle]! <= time) low = middle + 1;
    else high = middle;
  }
  return low;
}
