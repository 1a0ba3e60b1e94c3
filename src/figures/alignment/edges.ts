/** Between which instants the loads of a log begin and end. */
import type { Log } from '../../intake/log.ts';
import { findEdges, readBefore } from '../change-point.ts';

/** An edge of a load, s since the log's first row: after `from`, and at `to` at the latest. */
export interface Edge {
  readonly kind: 'begins' | 'ends';
  readonly from: number;
  readonly to: number;
}

export interface Edges {
  readonly channel: string;
  readonly edges: readonly Edge[];
}

/** What a clock that shows whole seconds leaves out at most, s. */
const WHOLE = 1;

/**
 * Each edge that lies inside the log: after the reading before it, less half a step, since a reading may be a mean over the step before it; and
 * not after the reading that shows it, or a second later where all instants are whole seconds, since those may be cut off. A temperature bends slowly: its edges may be off by the sharpness of the method. Null without a load.
 */
export function edgesOf(log: Log): Edges | null {
  const found = findEdges(log);
  if (!found) return null;
  const { seconds, step } = log.time;
  const cut = seconds.every((time) => Number.isInteger(time)) ? WHOLE : 0;
  const around = (row: number): Pick<Edge, 'from' | 'to'> =>
    found.bends
      ? { from: seconds[row]! - found.sharpness, to: seconds[row]! + found.sharpness }
      : { from: readBefore(log, found, row) - (step ?? 0) / 2, to: seconds[row]! + cut };
  const edges = found.loads.flatMap(({ startRow, endRow }): Edge[] => [
    ...(startRow > 0 ? [{ kind: 'begins' as const, ...around(startRow) }] : []),
    ...(endRow < log.rows ? [{ kind: 'ends' as const, ...around(endRow) }] : []),
  ]);
  return edges.length === 0 ? null : { channel: found.channel, edges };
}
