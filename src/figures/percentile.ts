/** Percentiles of the readings of a stretch by time, with the interval that order statistics give. */
import { quantileRanks } from '../statistics/quantile-ranks.ts';
import { seriesMean } from '../statistics/series-mean.ts';
import type { Readings } from './readings.ts';

export interface Percentile {
  readonly value: number;
  /** Between these readings it lies with 95 %, as far as the scatter of the readings tells. */
  readonly low: number;
  readonly high: number;
}

/** Readings that are worth too few independent ones: how many they are worth, and how many the percentile needs. */
export interface TooFew {
  readonly worth: number;
  readonly needed: number;
}

/**
 * The smallest reading that the readings of a share `p` of the time do not exceed. Readings that follow each other repeat each other:
 * the effective count is that of whether a reading lies below the percentile, the least of both ways to count equal ones. Needs a reading.
 */
export function percentileOf(readings: Readings, p: number): Percentile | TooFew {
  const at = sharesOf(readings);
  const value = at(p);
  const count = Math.min(
    effective(readings, (y) => y <= value),
    effective(readings, (y) => y < value),
  );
  const { low, high } = quantileRanks(count, p);
  if (low === null || high === null) return { worth: Math.floor(count), needed: neededFor(p) };
  const worth = Math.floor(count) + 1;
  return { value, low: at(low / worth), high: at(high / worth) };
}

export function isTooFew(percentile: Percentile | TooFew): percentile is TooFew {
  return 'needed' in percentile;
}

/** So many independent readings leave 2.5 % for none to lie beyond the percentile. */
function neededFor(p: number): number {
  return Math.ceil(Math.log(0.025) / Math.log(Math.max(p, 1 - p)));
}

/** Number of independent readings that tell a share as well; all of them where every reading is on one side. */
function effective({ y, weights, observed }: Readings, below: (value: number) => boolean): number {
  const sides = Float64Array.from(y, (value) => (below(value) ? 1 : 0));
  if (sides.every((side) => side === sides[0])) return y.length;
  return seriesMean(sides, observed > 0 ? weights : undefined).effectiveCount;
}

/** The reading below or at which a share of the time lies. */
function sharesOf({ y, weights, observed }: Readings): (share: number) => number {
  const order = Array.from(y, (_, i) => i).sort((a, b) => y[a]! - y[b]!);
  const weightOf = (i: number) => (observed > 0 ? weights[i]! / observed : 1 / y.length);
  const reached = new Float64Array(order.length);
  let sum = 0;
  order.forEach((i, rank) => {
    sum += weightOf(i);
    reached[rank] = sum;
  });
  return (share) => {
    const rank = reached.findIndex((each) => each >= share - 1e-12);
    return y[order[rank < 0 ? order.length - 1 : rank]!]!;
  };
}
