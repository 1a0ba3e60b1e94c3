import { exp } from './elementary.ts';
import type { SeriesCourse } from './series-mean.ts';

/** Blocks that the course is sought on, where it may bend, and how long it may take to settle, as shares of what is left after the bend. */
const BLOCKS = 200;
const BENDS = 200;
const SETTLING = [1 / 3, 1 / 8, 1 / 20, 1 / 50];
/** Two levels and an exponential besides the mean: their sizes, where it bends, how quickly it settles. */
const PARAMETERS = 4;
const FEWEST = 32;

/**
 * The course of something that held a level, bent, and settled exponentially to another: a load that a governor cut back. Two shapes for
 * `seriesMean`: one before the bend, and the exponential after it; bend and settling time are those of the least squares on a grid.
 *
 * When: the mean of a load that is known to have changed, as it went. Never to find out whether it changed.
 * @param t instants, rising. Unit: s.
 * @param y readings. Unit: any.
 * @returns the shapes, or null for fewer than 32 readings
 * Source: common practice, no source; proved by the coverage family of loads that changed.
 * Cost: 800 fits of at most 200 blocks.
 * @example
 * kneeCourse(Float64Array.from({ length: 40 }, (_, k) => k), Float64Array.from({ length: 40 }, (_, k) => (k < 20 ? 2 : 1))).shapes[0].indexOf(0) // 20
 * kneeCourse([0, 1], [2, 1]) // null
 */
export function kneeCourse(t: ArrayLike<number>, y: ArrayLike<number>): SeriesCourse | null {
  const n = t.length;
  if (n < FEWEST) return null;
  const blocks = blocksOf(t, y, Math.min(n, BLOCKS));
  const end = t[n - 1]!;
  let best = { rss: Number.POSITIVE_INFINITY, bend: t[0]!, time: 1 };
  for (let k = 1; k < BENDS; k++) {
    const index = Math.floor((k * blocks.t.length) / BENDS);
    const bend = blocks.t[index]!;
    for (const share of SETTLING) {
      const time = share * (end - bend);
      const rss = scatterOf(blocks, 0, index, null) + scatterOf(blocks, index, blocks.t.length, { bend, time });
      if (rss < best.rss) best = { rss, bend, time };
    }
  }
  const { bend, time } = best;
  const before = Float64Array.from({ length: n }, (_, i) => (t[i]! < bend ? 1 : 0));
  const after = Float64Array.from({ length: n }, (_, i) => (t[i]! < bend ? 0 : exp((bend - t[i]!) / time)));
  return { shapes: [before, after], parameters: PARAMETERS };
}

interface Blocks {
  readonly t: Float64Array;
  readonly y: Float64Array;
}

function blocksOf(t: ArrayLike<number>, y: ArrayLike<number>, count: number): Blocks {
  const sums = { t: new Float64Array(count), y: new Float64Array(count), n: new Float64Array(count) };
  for (let i = 0; i < t.length; i++) {
    const k = Math.floor((i * count) / t.length);
    sums.t[k]! += t[i]!;
    sums.y[k]! += y[i]!;
    sums.n[k]! += 1;
  }
  return { t: sums.t.map((sum, k) => sum / sums.n[k]!), y: sums.y.map((sum, k) => sum / sums.n[k]!) };
}

/** Sum of squares of some blocks about their mean, or about the best constant and exponential. */
function scatterOf({ t, y }: Blocks, from: number, to: number, settling: { bend: number; time: number } | null): number {
  const n = to - from;
  let [mean, meanShape] = [0, 0];
  const shapeAt = (i: number) => (settling ? exp((settling.bend - t[i]!) / settling.time) : 0);
  for (let i = from; i < to; i++) {
    mean += y[i]! / n;
    meanShape += shapeAt(i) / n;
  }
  let [squares, products, shapes] = [0, 0, 0];
  for (let i = from; i < to; i++) {
    const [a, b] = [y[i]! - mean, shapeAt(i) - meanShape];
    squares += a * a;
    products += a * b;
    shapes += b * b;
  }
  return shapes > 0 ? squares - (products * products) / shapes : squares;
}
