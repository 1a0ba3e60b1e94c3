/** Drawn readings at round times, for the short table below a plot. */
import { nearestIndex } from '../panel.ts';
import { fixed } from '../wording.ts';

/** About how many rows the short table has. */
export const TABLE_ROWS = 16;

/** Half the distance of two ticks: how far a reading may be from the time that it stands for. */
export function halfStep(ticks: readonly number[]): number {
  return ticks.length > 1 ? (ticks[1]! - ticks[0]!) / 2 : Number.POSITIVE_INFINITY;
}

/** The reading nearest to a time, or nothing when none is near enough. */
export function cellAt(
  line: { readonly x: ArrayLike<number>; readonly y: ArrayLike<number>; readonly decimals: number },
  time: number,
  half: number,
): string {
  const i = nearestIndex(line.x, time);
  return Math.abs(line.x[i]! - time) > half ? '' : fixed(line.y[i]!, line.decimals);
}
