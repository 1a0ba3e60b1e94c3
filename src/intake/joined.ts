/** Several logs of one run on one clock: rows in the order of time, each of one log, so that every reading keeps its file and line. */
import type { Channel, JoinedLog, Log } from './log.ts';

/** A log of a run, and when its first row stands on the run's clock, s since the first row of the first log. */
export interface PlacedLog {
  readonly name: string;
  readonly log: Log;
  readonly at: number;
}

/**
 * One log of all: rows by time, where equal in the order of the logs. The first log has the run's clock, its start and its step; rows
 * before its first row are left out. A single log is returned as it is.
 *
 * @param order - names of channels in the order in which the run declares them.
 */
export function joinLogs(placed: readonly PlacedLog[], order: readonly string[]): Log {
  const [first, ...others] = placed as [PlacedLog, ...PlacedLog[]];
  if (others.length === 0) return first.log;
  const shortened = placed.find(({ log }) => log.condensed)?.log.condensed;
  const rows = mergedRows(placed);
  const seconds = Float64Array.from(rows, ({ of, row }) => placed[of]!.at + placed[of]!.log.time.seconds[row]!);
  const lines = Int32Array.from(rows, ({ of, row }) => placed[of]!.log.lines[row]!);
  const channels = placed.flatMap(({ log }, of) => log.channels.map((channel) => spread(channel, of, rows)));
  return {
    ...first.log,
    ...(shortened ? { condensed: shortened } : {}),
    rows: rows.length,
    lines,
    time: { ...first.log.time, seconds, gaps: placed.flatMap(({ log }, of) => movedGaps(log, of, rows)) },
    channels: channels.sort((a, b) => order.indexOf(a.name) - order.indexOf(b.name)),
    joined: {
      logs: placed.map(({ name, log }): JoinedLog => ({ name, file: log.file, column: log.time.column, step: log.time.step })),
      ofRow: Uint8Array.from(rows, ({ of }) => of),
    },
  };
}

/** A log without rows and channels: that of a run which has none. */
export const NO_LOG: Log = {
  file: '',
  rows: 0,
  lines: new Int32Array(0),
  time: { seconds: new Float64Array(0), column: '', format: 'elapsed', start: null, step: null, gaps: [] },
  channels: [],
  setAside: [],
  repairs: [],
  inferences: [],
  encoding: '',
  delimiter: '',
};

interface Row {
  readonly of: number;
  readonly row: number;
}

function mergedRows(placed: readonly PlacedLog[]): readonly Row[] {
  const next = placed.map(({ log, at }) => log.time.seconds.findIndex((time) => at + time >= 0)).map((row) => Math.max(row, 0));
  placed.forEach(({ log, at }, of) => {
    if (!((log.time.seconds[log.rows - 1] ?? -1) + at >= 0)) next[of] = log.rows;
  });
  const rows: Row[] = [];
  for (;;) {
    let least = -1;
    let time = Number.POSITIVE_INFINITY;
    for (let of = 0; of < placed.length; of++) {
      const { log, at } = placed[of]!;
      const own = next[of]! < log.rows ? at + log.time.seconds[next[of]!]! : Number.POSITIVE_INFINITY;
      if (own < time) [least, time] = [of, own];
    }
    if (least < 0) return rows;
    rows.push({ of: least, row: next[least]!++ });
  }
}

/** A channel over all rows: no reading where the row is of another log. */
function spread(channel: Channel, of: number, rows: readonly Row[]): Channel {
  const values = Float64Array.from(rows, (each) => (each.of === of ? channel.values[each.row]! : Number.NaN));
  return { ...channel, values, log: of };
}

function movedGaps(log: Log, of: number, rows: readonly Row[]): Log['time']['gaps'] {
  if (log.time.gaps.length === 0) return [];
  return log.time.gaps.flatMap(({ row, length }) => {
    const moved = rows.findIndex((each) => each.of === of && each.row === row);
    return moved < 0 ? [] : [{ row: moved, length }];
  });
}
