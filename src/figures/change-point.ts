/** Where loads begin and end, told from the log itself. */
import type { Log, QuantityKind } from '../intake/log.ts';
import { findKinks } from './kink.ts';
import { findLevels } from './levels.ts';
import { stepIn } from './origin.ts';

/** A load: its first row, and the first row after it (the number of rows where it runs to the end). */
export interface EdgeRows {
  readonly startRow: number;
  readonly endRow: number;
}

export interface LoadEdges {
  /** In order; one or more. */
  readonly loads: readonly EdgeRows[];
  readonly channel: string;
  /** Name of the method and its source. */
  readonly method: string;
  /** Whether they were told by the bends of a temperature, which follows its load slowly. */
  readonly bends: boolean;
  /** How far an edge may be from where it is told, s. */
  readonly sharpness: number;
}

/** What shows a load best comes first. A temperature follows its load slowly, so its slope is looked at instead of its level. */
const EVIDENCE: readonly QuantityKind[] = ['power', 'utilisation', 'clock', 'current'];

const LEVELS = "Page's cumulative sum about the middle of two levels (E. S. Page, Biometrika 41, 1954, 100–115)";
const SLOPES =
  'the sharpest bends of two-phase lines (D. V. Hinkley, Journal of the American Statistical Association 66, 1971, 736–743)';
/** A bend is told to half a line or so, s. */
const BEND = 30;

/** When the channel that shows the loads was read last before a row, s since the log's first row. An edge lies behind that. */
export function readBefore({ time, channels }: Log, { channel }: LoadEdges, row: number): number {
  const { values } = channels.find(({ name }) => name === channel)!;
  const before = values.subarray(0, row).findLastIndex((value) => !Number.isNaN(value));
  return time.seconds[Math.max(0, before)]!;
}

/** The edges by the first channel that shows them, in the order power, utilisation, clock, current, temperature. */
export function findEdges(log: Log): LoadEdges | null {
  const { seconds } = log.time;
  for (const quantity of EVIDENCE) {
    const channel = log.channels.find((each) => each.quantity === quantity);
    const loads = channel && findLevels(seconds, channel.values);
    if (channel && loads && loads.length > 0)
      return { loads, channel: channel.name, method: LEVELS, bends: false, sharpness: 2 * (stepIn(log, channel.log) ?? 0) };
  }
  const channel = log.channels.find((each) => each.quantity === 'temperature');
  const loads = channel && findKinks(seconds, channel.values);
  return channel && loads
    ? { loads, channel: channel.name, method: SLOPES, bends: true, sharpness: Math.max(BEND, 2 * (stepIn(log, channel.log) ?? 0)) }
    : null;
}
