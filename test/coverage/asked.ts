/** What is asked of the intervals: for each figure what the truth is, in words, and how its interval is made. */

export interface Asked {
  /** What the interval is asked to hold, in words for readers. */
  readonly words: string;
  /** Extremes and counts are told apart from means and fits: their intervals are made otherwise. */
  readonly kind: 'mean or fit' | 'extreme' | 'time or count';
}

/** Intervals that held the truth, of all the figures that were present. */
export interface Held {
  held: number;
  of: number;
}
export type Tally = Record<string, Held>;

/** What the readings of a mean scatter about: `withoutChance`. */
export const TWIN = ', had neither workload nor room wandered';

export function emptyTally(names: readonly string[]): Tally {
  return Object.fromEntries(names.map((name) => [name, { held: 0, of: 0 }]));
}

/** Adds one answer, where the figure was there and has a truth. */
export function count(tally: Tally, name: string, held: boolean | null): void {
  const row = tally[name]!;
  if (held === null) return;
  row.of++;
  if (held) row.held++;
}
