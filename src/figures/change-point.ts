/** Where a load begins and ends, told from the log itself. */
import type { Channel, Log, QuantityKind } from '../intake/log.ts';
import { findKinks } from './kink.ts';

export interface LoadEdges {
  /** First row under load, and the first row after it (the number of rows where the load runs to the end). */
  readonly startRow: number;
  readonly endRow: number;
  readonly channel: string;
  /** Name of the method and its source. */
  readonly method: string;
}

/** What shows a load best comes first. A temperature follows its load slowly, so its slope is looked at instead of its level. */
const EVIDENCE: readonly QuantityKind[] = ['power', 'utilisation', 'clock', 'current'];

const LEVELS = "Page's cumulative sum about the middle of two levels (E. S. Page, Biometrika 41, 1954, 100–115)";
const SLOPES =
  'the sharpest bends of two-phase lines (D. V. Hinkley, Journal of the American Statistical Association 66, 1971, 736–743)';

/** The edges by the first channel that shows them, in the order power, utilisation, clock, current, temperature. */
export function findEdges(log: Log): LoadEdges | null {
  for (const quantity of EVIDENCE) {
    const channel = log.channels.find((each) => each.quantity === quantity);
    const rows = channel && findLevels(channel.values);
    if (channel && rows) return { ...rows, channel: channel.name, method: LEVELS };
  }
  const channel = log.channels.find((each) => each.quantity === 'temperature');
  const rows = channel && findKinks(log.time.seconds, channel.values);
  return channel && rows ? { ...rows, channel: channel.name, method: SLOPES } : null;
}

export interface EdgeRows {
  readonly startRow: number;
  readonly endRow: number;
}

/** The two levels must lie this many within-level standard deviations apart, and differ by this share of the higher one. */
const SEPARATION = 3;
const LEAST_CHANGE = 0.1;

/**
 * The stretch of highest level: of all stretches the one whose sum of deviations from the middle between both levels is
 * largest. The levels are re-estimated from inside and outside until the edges stay. O(n) a round; null when the levels
 * do not stand apart.
 */
export function findLevels(values: Channel['values']): EdgeRows | null {
  let reference = middleOf(values);
  let edges: EdgeRows | null = null;
  for (let round = 0; round < 8; round++) {
    const next = largestExcess(values, reference);
    if (!next) return null;
    const levels = levelsOf(values, next);
    if (!levels) return null;
    const settled = edges && edges.startRow === next.startRow && edges.endRow === next.endRow;
    edges = next;
    reference = (levels.inside + levels.outside) / 2;
    if (settled) return standsApart(levels) ? edges : null;
  }
  return edges;
}

/** Middle between the lowest and the highest mean of ten neighbouring readings, so that single spikes do not set it. */
function middleOf(values: Float64Array): number {
  const kept = values.filter((value) => !Number.isNaN(value));
  const size = Math.max(1, Math.min(10, Math.floor(kept.length / 20)));
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let start = 0; start + size <= kept.length; start += size) {
    const mean = kept.subarray(start, start + size).reduce((sum, value) => sum + value, 0) / size;
    low = Math.min(low, mean);
    high = Math.max(high, mean);
  }
  return (low + high) / 2;
}

/** Maximum-sum stretch of `values − reference` in one pass; missing readings count nothing. */
function largestExcess(values: Float64Array, reference: number): EdgeRows | null {
  let sum = 0;
  let best = 0;
  let start = 0;
  let found: EdgeRows | null = null;
  for (let row = 0; row < values.length; row++) {
    const excess = values[row]! - reference;
    if (Number.isNaN(excess)) continue;
    if (sum <= 0) {
      sum = 0;
      start = row;
    }
    sum += excess;
    if (sum > best) {
      best = sum;
      found = { startRow: start, endRow: row + 1 };
    }
  }
  return found;
}

interface Levels {
  readonly inside: number;
  readonly outside: number;
  /** Pooled standard deviation within both. */
  readonly within: number;
}

function levelsOf(values: Float64Array, { startRow, endRow }: EdgeRows): Levels | null {
  const inside = momentsOf(values, (row) => row >= startRow && row < endRow);
  const outside = momentsOf(values, (row) => row < startRow || row >= endRow);
  const freedom = inside.n + outside.n - 2;
  if (inside.n < 2 || outside.n < 2) return null;
  return { inside: inside.mean, outside: outside.mean, within: Math.sqrt((inside.squares + outside.squares) / freedom) };
}

function momentsOf(values: Float64Array, belongs: (row: number) => boolean): { n: number; mean: number; squares: number } {
  let n = 0;
  let mean = 0;
  let squares = 0;
  for (let row = 0; row < values.length; row++) {
    const value = values[row]!;
    if (Number.isNaN(value) || !belongs(row)) continue;
    n++;
    const delta = value - mean;
    mean += delta / n;
    squares += delta * (value - mean);
  }
  return { n, mean, squares };
}

function standsApart({ inside, outside, within }: Levels): boolean {
  const change = inside - outside;
  return change > SEPARATION * within && change > LEAST_CHANGE * Math.abs(inside);
}
