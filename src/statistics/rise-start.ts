/** Grid points for the logarithm of a time constant: neighbours differ by about a third. */
const GRID = 40;
/** Blocks grow in proportion to the time since the first row, so that an exponential bends in them by less than a thousandth. */
const GROWTH = 0.06;
/** Two decays whose angle has a squared sine below this cannot be told apart in doubles. */
const PARALLEL = 1e-9;

/**
 * Time constants near the best fit of one or two exponential rises, by a grid over their logarithms on block averages.
 *
 * When: as the start of `exponentialRise`; the fit itself uses every row.
 * @param s time since the step, never decreasing, and y; finite, equally many
 * @param count 1 or 2 time constants
 * @returns ascending time constants between a 2000th and twenty times the span, or null where no pair of exponentials can be told apart
 * Source: common practice, no source.
 * Cost: one pass, 40 exponentials and 40 (or 800) sums of products for each of about 120 blocks.
 * @example
 * riseStart([0, 1, 2, 3, 4, 5], [0, 0.5, 0.75, 0.875, 0.9375, 0.96875], 1)[0] // 1.294122… (near 1 ÷ ln 2, from which a fit begins)
 */
export function riseStart(s: ArrayLike<number>, y: ArrayLike<number>, count: 1 | 2): number[] | null {
  const span = s[s.length - 1]! - s[0]!;
  const grid = Array.from({ length: GRID }, (_, k) => (span / 2000) * 40_000 ** (k / (GRID - 1)));
  const { at, values, weights } = blocks(s, y);
  const right = centred(values, weights);
  const decays = grid.map((tau) =>
    centred(
      at.map((time) => Math.exp(-time / tau)),
      weights,
    ),
  );
  const alone = decays.map((decay) => ({ square: product(decay, decay), along: product(decay, right) }));
  let best: number[] | null = null;
  let most = 0;
  for (const [j, k] of candidates(count)) {
    const drop = k === undefined ? one(alone[j]!) : two(alone[j]!, alone[k]!, product(decays[j]!, decays[k]!));
    if (drop > most) [best, most] = [k === undefined ? [grid[j]!] : [grid[j]!, grid[k]!], drop];
  }
  return best;
}

/** A decay's own sum of squares, and its sum of products with the readings, both centred. */
interface Alone {
  readonly square: number;
  readonly along: number;
}

/** By how much one decay makes the sum of squares smaller. */
function one({ square, along }: Alone): number {
  return square > 0 ? (along * along) / square : 0;
}

/** By how much two decays make the sum of squares smaller; 0 where they are all but parallel. */
function two(a: Alone, b: Alone, across: number): number {
  const determinant = a.square * b.square - across * across;
  if (!(determinant > PARALLEL * a.square * b.square)) return 0;
  return (b.square * a.along ** 2 - 2 * across * a.along * b.along + a.square * b.along ** 2) / determinant;
}

function candidates(count: 1 | 2): (readonly [number, number?])[] {
  const all = Array.from({ length: GRID }, (_, k) => k);
  return count === 1 ? all.map((k) => [k]) : all.flatMap((k) => all.slice(k + 2).map((other) => [k, other] as const));
}

/** Deviations from the weighted mean, times the roots of the weights. */
function centred(values: readonly number[], weights: readonly number[]): Float64Array {
  let [sum, total] = [0, 0];
  for (let i = 0; i < values.length; i++) {
    sum += values[i]! * weights[i]!;
    total += weights[i]!;
  }
  const result = new Float64Array(values.length);
  for (let i = 0; i < result.length; i++) result[i] = (values[i]! - sum / total) * Math.sqrt(weights[i]!);
  return result;
}

function product(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

/** Mean time, mean reading and count of each block. */
function blocks(s: ArrayLike<number>, y: ArrayLike<number>) {
  const at: number[] = [];
  const values: number[] = [];
  const weights: number[] = [];
  for (let from = 0, to = 0; from < s.length; from = to) {
    const end = s[from]! + GROWTH * (s[from]! - s[0]!);
    let [sumAt, sumY] = [0, 0];
    for (to = from; to < s.length && (to === from || s[to]! <= end); to++) {
      sumAt += s[to]!;
      sumY += y[to]!;
    }
    at.push(sumAt / (to - from));
    values.push(sumY / (to - from));
    weights.push(to - from);
  }
  return { at, values, weights };
}
