/** Since when a criterion holds: told between an earliest and a latest time. */
import type { Excess } from './hidden.ts';
import { holdsFrom, type Judged } from './judge.ts';

/** Seconds since the load began, with their standard uncertainty and 95 % interval, which is lopsided. */
export interface Opening {
  readonly value: number;
  readonly u: number;
  readonly interval: readonly [number, number];
}

/**
 * never: it certainly changed too much at the end. undecided: whether it did cannot be told. open: steady at the end, but the latest
 * time since when is not known. closed: between two times.
 */
export type Found =
  | { readonly outcome: 'never' | 'undecided' | 'open'; readonly notBefore: number }
  | { readonly outcome: 'closed'; readonly notBefore: number; readonly at: Opening };

/** Width of a normal 95 % interval, in standard deviations. */
const WIDTH = 2 * 1.959964;

/**
 * Three values for every window: certainly not steady where what was seen to change is above the limit by more than noise and step can
 * feign; certainly steady where what may have changed is below it by as much; unknown between. The value is where the course with
 * straight lines across its holes becomes steady; the middle where nothing was read at the beginning. `stepAt`: seconds between the readings that
 * a judgement at a time rests on; a course bends between them, so that each end has room for one.
 */
export function openingOf(
  { at, change, least, greatest, most }: Judged,
  { less, more, noise }: Excess,
  stepAt: (time: number) => number,
): Found {
  const last = at.length - 1;
  const early = holdsFrom(least, most + more);
  if (early === null) return { outcome: 'never', notBefore: at[last]! };
  const notBefore = early === 0 ? 0 : Math.max(0, at[early]! - stepAt(at[early]!));
  const held = holdsFrom(change, most) ?? holdsFrom(change, most + noise);
  if (held === null) return { outcome: 'undecided', notBefore };
  const late = most > less ? holdsFrom(greatest, most - less) : null;
  if (late === null) return { outcome: 'open', notBefore };
  const step = stepAt(at[late]!);
  const interval = [notBefore, late === 0 ? step : at[late]! + step] as const;
  const unread = held === 0 && greatest[0] === Number.POSITIVE_INFINITY;
  const value = unread ? (interval[0] + interval[1]) / 2 : Math.min(Math.max(at[held]!, interval[0]), interval[1]);
  const u = Math.max((interval[1] - interval[0]) / WIDTH, step / Math.sqrt(12));
  return { outcome: 'closed', notBefore, at: { value, u, interval } };
}
