/** Grid points for the logarithm of a time constant: neighbours differ by about a third. */
const GRID = 40;
/** Blocks grow in proportion to the time since the first row, so that an exponential bends in them by less than a thousandth. */
const GROWTH = 0.06;

/**
 * Time constant near the best fit of one exponential rise, by a grid over its logarithm on block averages.
 *
 * When: as the start of `exponentialRise`; the fit itself uses every row.
 * @param s time since the step, never decreasing, and y; finite, equally many
 * @returns between a 2000th and twenty times the span, or null where no exponential explains anything
 * Source: common practice, no source.
 * Cost: one pass, and 40 exponentials for each of about 120 blocks.
 * @example
 * riseStart([0, 1, 2, 3, 4, 5], [0, 0.5, 0.75, 0.875, 0.9375, 0.96875]) // 1.294122… (near 1 ÷ ln 2, from which a fit begins)
 */
export function riseStart(s: ArrayLike<number>, y: ArrayLike<number>): number | null {
  const span = s[s.length - 1]! - s[0]!;
  const { at, values, weights } = blocks(s, y);
  const right = centred(values, weights);
  let best: number | null = null;
  let most = 0;
  for (let k = 0; k < GRID; k++) {
    const tau = (span / 2000) * 40_000 ** (k / (GRID - 1));
    const decays = at.map((time) => Math.exp(-time / tau));
    const explained = explainedBy(centred(decays, weights), right);
    if (explained > most) [best, most] = [tau, explained];
  }
  return best;
}

/** By how much one decay makes the sum of squares smaller. */
function explainedBy(decay: Float64Array, readings: Float64Array): number {
  const square = product(decay, decay);
  return square > 0 ? product(decay, readings) ** 2 / square : 0;
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
