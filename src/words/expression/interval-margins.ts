/**
 * How much further than its parts tell the 95 % interval of a value reaches, down and up. An extreme of a log has such slack: its true
 * peak may lie between two readings. Slacks add as limits do, in full (common practice, no source).
 */
import type { PresentFigure } from '../../figures/figure.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { interval95 } from '../../quantities/uncertainty.ts';

/** Both 0 or above, in the unit of the value (K where that is °C). */
export type Margins = readonly [down: number, up: number];

export const NONE: Margins = [0, 0];

/** By how much a figure's own interval exceeds the one of its parts. */
export function marginsOfFigure({ quantity, interval }: PresentFigure): Margins {
  const known = interval95(quantity);
  if (!interval || !known) return NONE;
  return [Math.max(0, known[0] - interval[0]), Math.max(0, interval[1] - known[1])];
}

/** Slack of a sum of values, each weighed by its sensitivity; a negative one swaps down and up. */
export function combinedMargins(slacks: readonly Margins[], sensitivities: readonly number[]): Margins {
  let down = 0;
  let up = 0;
  slacks.forEach((slack, index) => {
    const weight = sensitivities[index] ?? 1;
    down += Math.abs(weight) * slack[weight < 0 ? 1 : 0];
    up += Math.abs(weight) * slack[weight < 0 ? 0 : 1];
  });
  return [down, up];
}

/** An interval with its slack added. */
export function widened([low, high]: readonly [number, number], [down, up]: Margins): readonly [number, number] {
  return [low - down, high + up];
}

/** The 95 % interval of a value where it is not the one of its parts: a figure's own, or one with slack. */
export function ownInterval(value: {
  readonly quantity: Quantity;
  readonly slack: Margins;
  readonly figure?: PresentFigure;
}): readonly [number, number] | undefined {
  if (value.figure) return value.figure.interval;
  const known = interval95(value.quantity);
  return known && (value.slack[0] > 0 || value.slack[1] > 0) ? widened(known, value.slack) : undefined;
}
