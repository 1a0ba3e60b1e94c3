/** Signs with whiskers, and the axes that they stand on. */
import type { Rule, SignMark } from './marks.ts';
import { inkOf, shapeOf } from './palette.ts';

/** A value with its 95 % interval along one axis, in the units of that axis. */
export interface Spread {
  readonly value: number;
  readonly interval: readonly [number, number] | null;
}

/**
 * Whiskers stretch an axis beyond its values by at most this share of their span, or by so many median whiskers where that is more; one
 * that goes on is cut at the end of the axis.
 */
const FAR_SHARE = 0.5;
const FAR_WHISKERS = 2;

/** Lowest and highest that an axis has to hold: all values, `neutral` and the intervals, as far as these do not dwarf the values. */
export function rangeOf(spreads: readonly Spread[], neutral: number): [low: number, high: number] {
  const values = [neutral, ...spreads.map(({ value }) => value)];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const ends = spreads.flatMap(({ interval }) => interval ?? []);
  const room = Math.max(FAR_SHARE * (high - low), FAR_WHISKERS * medianWhisker(spreads));
  return [Math.max(low - room, Math.min(low, ...ends)), Math.min(high + room, Math.max(high, ...ends))];
}

/** Whether a whisker goes on beyond what the axis has to hold. */
export function isCut(spreads: readonly Spread[], neutral: number): boolean {
  const [low, high] = rangeOf(spreads, neutral);
  return spreads.some(({ interval }) => interval !== null && (interval[0] < low || interval[1] > high));
}

function medianWhisker(spreads: readonly Spread[]): number {
  const lengths = spreads.flatMap(({ value, interval }) => (interval ? interval.map((end) => Math.abs(end - value)) : []));
  const sorted = lengths.sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? 0;
}

/** Half the length of the stroke at the end of a whisker, px. */
const END = 4;

/** The whisker of a sign along one axis, from the pixel of its low end to that of its high one, within `from` to `to` px; an end that is cut has no stroke, an exact value no whisker. */
export function whisker(
  ends: readonly [number, number],
  across: number,
  bounds: readonly [from: number, to: number],
  look: { readonly k: number; readonly vertical?: boolean },
): Rule[] {
  const [low, high] = [Math.min(...bounds), Math.max(...bounds)];
  const [start, end] = [Math.min(...ends), Math.max(...ends)];
  const [from, to] = [Math.max(start, low), Math.min(end, high)];
  if (from > to || start === end) return [];
  const ink = { stroke: inkOf(look.k), width: 1.25 };
  const line = (x: number, y: number, x2: number, y2: number): Rule =>
    look.vertical ? { x: y, y: x, x2: y2, y2: x2, ...ink } : { x, y, x2, y2, ...ink };
  const stroke = (at: number) => line(at, across - END, at, across + END);
  return [line(from, across, to, across), ...(start >= low ? [stroke(from)] : []), ...(end <= high ? [stroke(to)] : [])];
}

/** Filled where it is told apart from the reference, an outline on paper where it is not. */
export function sign(x: number, y: number, k: number, filled: boolean): SignMark {
  return { x, y, shape: shapeOf(k), stroke: inkOf(k), fill: filled ? inkOf(k) : 'var(--plot-paper)' };
}
