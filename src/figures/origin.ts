/** Of which log of a run a channel is, where several are joined: its file, its time column, its step, and its readings beside another channel's. */
import type { Channel, Log } from '../intake/log.ts';

/** Project path of the log with that index; undefined for the run's first, which needs no name. */
export function fileOf({ joined }: Log, log: number | undefined): string | undefined {
  return joined && log ? `data/${joined.logs[log]!.file}` : undefined;
}

/** Column of the time of the log with that index. */
export function timeColumn({ joined, time }: Log, log: number | undefined): string {
  return joined?.logs[log ?? 0]?.column ?? time.column;
}

/** Median step of the log with that index, s; null with fewer than two rows. */
export function stepIn({ joined, time }: Log, log: number | undefined): number | null {
  return joined ? joined.logs[log ?? 0]!.step : time.step;
}

/** A reading stands for what lies so many steps of its own log beside it, and no farther. */
const REACH = 5;

/**
 * Values of `of` in the rows of `beside`: its own where both are of one log; else what lies on the straight line between its readings before
 * and after the row, where these are no gap apart. NaN where there is none.
 */
export function valuesBeside(log: Log, of: Pick<Channel, 'values' | 'log'>, beside: Pick<Channel, 'log'>): Float64Array {
  const { joined } = log;
  if (!joined || of.log === beside.log) return of.values;
  const longest = REACH * (stepIn(log, of.log) ?? Number.POSITIVE_INFINITY);
  const { seconds } = log.time;
  const found = new Float64Array(log.rows).fill(Number.NaN);
  let before = -1;
  let after = nextReading(of.values, 0);
  for (let row = 0; row < log.rows; row++) {
    if (after <= row && after < log.rows) {
      before = after;
      after = nextReading(of.values, row + 1);
    }
    if (joined.ofRow[row] !== (beside.log ?? 0) || before < 0) continue;
    const [from, value] = [seconds[before]!, of.values[before]!];
    if (seconds[row] === from) found[row] = value;
    else if (after < log.rows && seconds[after]! - from <= longest) {
      const share = (seconds[row]! - from) / (seconds[after]! - from);
      found[row] = value + share * (of.values[after]! - value);
    }
  }
  return found;
}

/** The last reading of `of` at or before each row; NaN before its first. Its own values, gaps and all, where it is of the log of `beside`. */
export function latestBeside(log: Log, of: Pick<Channel, 'values' | 'log'>, beside: Pick<Channel, 'log'>): Float64Array {
  if (!log.joined || of.log === beside.log) return of.values;
  let latest = Number.NaN;
  return of.values.map((value) => {
    if (!Number.isNaN(value)) latest = value;
    return latest;
  });
}

function nextReading(values: Float64Array, from: number): number {
  let row = from;
  while (row < values.length && Number.isNaN(values[row]!)) row++;
  return row;
}
