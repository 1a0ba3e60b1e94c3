import { describe, expect, test } from 'vitest';
import { linearLeastSquares } from '../../src/statistics/linear-least-squares.ts';
import { stopSearch } from '../../src/statistics/rise-stop-search.ts';
import { expectNear } from './near.ts';
import { gaussian } from './noise.ts';

const COUNT = 24;
const SECONDS = Float64Array.from({ length: COUNT }, (_, k) => k);
const SPAN = COUNT - 1;

/** Least sum of squares of one or two decays that stop at `at`, by the general solver; infinite where an amplitude is not above zero. */
function leftBy(y: ArrayLike<number>, at: number, timeConstants: readonly number[]): number {
  const decays = timeConstants.map((tau) => Array.from(SECONDS, (s) => Math.exp(-Math.min(s, at) / tau)));
  const solution = linearLeastSquares([Array.from(SECONDS, () => 1), ...decays], Array.from(y));
  return solution?.parameters.slice(1).every((amplitude) => amplitude < 0) ? solution.rss : Number.POSITIVE_INFINITY;
}

/** The same over a grid of moments and of pairs of time constants. */
function leastOf(y: ArrayLike<number>): number {
  const taus = Array.from({ length: 24 }, (_, k) => 2 * (4 * SPAN) ** (k / 23));
  let least = Number.POSITIVE_INFINITY;
  for (let at = 3; at <= 0.8 * SPAN; at++)
    for (const [i, one] of taus.entries())
      for (const two of taus.slice(i)) least = Math.min(least, leftBy(y, at, one === two ? [one] : [one, two]));
  return least;
}

describe('statistics/rise-stop-search', () => {
  test.each([1, 2, 3, 4])(
    'finds no worse a stop than a search through all moments with the general solver, noise of seed %d',
    (seed) => {
      const random = gaussian(seed);
      const y = Float64Array.from(SECONDS, (s) => {
        const t = Math.min(s, 7);
        return 60 - 20 * Math.exp(-t / 2.5) - 12 * Math.exp(-t / 20) + random();
      });
      const found = stopSearch({ s: SECONDS, y, span: SPAN, shortest: 0.5 })!;
      expectNear(found.rss, leftBy(y, found.at, found.timeConstants), 1e-9);
      expect(found.rss).toBeLessThanOrEqual(leastOf(y) * (1 + 1e-9));
    },
  );
});
