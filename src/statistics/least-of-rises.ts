import { exponentialRise } from './exponential-rise.ts';
import type { RiseData } from './rise-pair.ts';
import { riseStart } from './rise-start.ts';
import { bestOfWalk, bothRise, riseWalk } from './rise-walk.ts';

/**
 * Least sum of squares of all rises that go on: one exponential, two, or one and a straight line.
 *
 * When: to hold against a rise that stops or bends.
 * @returns infinity where none fits. Unit: that of y, squared.
 * Source: common practice, no source.
 * Cost: some 10 ms for 120 rows.
 * @example
 * leastOfRises({ s: Float64Array.from({ length: 40 }, (_, k) => k), y: Float64Array.from({ length: 40 }, (_, k) => 10 * (1 - Math.exp(-k / 10))), span: 39, shortest: 0.5 }) < 1e-9 // true
 */
export function leastOfRises(data: RiseData): number {
  const near = riseStart(data.s, data.y);
  const one = near === null ? null : exponentialRise(data.s, data.y, [near]);
  const walk = riseWalk(data);
  const line = walk.find((pair) => !Number.isFinite(pair.slow) && bothRise(pair));
  const rises = [one, line, bestOfWalk(data, walk)];
  return Math.min(...rises.map((rise) => rise?.rss ?? Number.POSITIVE_INFINITY));
}
