import { linearLeastSquares } from './linear-least-squares.ts';

/** Grid points for the logarithm of a time constant: neighbours differ by about a third. */
const GRID = 40;
/** Blocks grow in proportion to the time since the first row, so that an exponential bends in them by less than a thousandth. */
const GROWTH = 0.03;

/**
 * Time constants near the best fit of one or two exponential rises, by a grid over their logarithms on block averages.
 *
 * When: as the start of `exponentialRise`; the fit itself uses every row.
 * @param s time since the step, never decreasing, and y; finite, equally many
 * @param count 1 or 2 time constants
 * @returns ascending time constants between a 2000th and twenty times the span, or null where no pair of exponentials can be told apart
 * Source: common practice, no source.
 * Cost: one pass; 40 (or 780) linear fits of about 200 blocks.
 */
export function riseStart(s: ArrayLike<number>, y: ArrayLike<number>, count: 1 | 2): number[] | null {
  const span = s[s.length - 1]! - s[0]!;
  const grid = Array.from({ length: GRID }, (_, k) => (span / 2000) * 40_000 ** (k / (GRID - 1)));
  const { at, values, roots } = blocks(s, y);
  const right = values.map((value, i) => value * roots[i]!);
  const decays = grid.map((tau) => roots.map((root, i) => root * Math.exp(-at[i]! / tau)));
  let best: number[] | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const pick of candidates(count)) {
    const fit = linearLeastSquares([roots, ...pick.map((k) => decays[k]!)], right);
    if (fit && fit.rss < least) [best, least] = [pick.map((k) => grid[k]!), fit.rss];
  }
  return best;
}

function candidates(count: 1 | 2): number[][] {
  const all = Array.from({ length: GRID }, (_, k) => k);
  return count === 1 ? all.map((k) => [k]) : all.flatMap((k) => all.slice(k + 2).map((other) => [k, other]));
}

/** Mean time, mean reading and root of the count of each block. */
function blocks(s: ArrayLike<number>, y: ArrayLike<number>) {
  const at: number[] = [];
  const values: number[] = [];
  const roots: number[] = [];
  for (let from = 0, to = 0; from < s.length; from = to) {
    const end = s[from]! + GROWTH * (s[from]! - s[0]!);
    let [sumAt, sumY] = [0, 0];
    for (to = from; to < s.length && (to === from || s[to]! <= end); to++) {
      sumAt += s[to]!;
      sumY += y[to]!;
    }
    at.push(sumAt / (to - from));
    values.push(sumY / (to - from));
    roots.push(Math.sqrt(to - from));
  }
  return { at, values, roots };
}
