import type { RiseData } from './rise-pair.ts';

/** Two decays whose angle has a squared sine below this cannot be told apart in doubles. */
const PARALLEL = 1e-9;
/** Candidates for the faster time constant. */
const CANDIDATES = 28;
const APART = 1.25;

/**
 * For each slower time constant of a grid the faster one, of a grid too, that fits best beside it with both amplitudes of one sign.
 *
 * When: as the starts of `risePair`.
 * @param slows slower time constants; Infinity for a straight line
 * @returns as many faster time constants; null where no pair of one sign fits
 * Source: common practice, no source.
 * Cost: one exponential and a few dozen products for each reading and candidate.
 * @example
 * risePairStarts({ s: Float64Array.from({ length: 13 }, (_, k) => k), y: Float64Array.from({ length: 13 }, (_, k) => 10 - 4 * Math.exp(-k) - 6 * Math.exp(-k / 5)), span: 12, shortest: 0.5 }, [5])[0].toFixed(0) // '1'
 */
export function risePairStarts(data: RiseData, slows: readonly number[]): (number | null)[] {
  const { s, y, span, shortest } = data;
  const ratio = span / shortest;
  const fasts = Array.from({ length: CANDIDATES }, (_, k) => shortest * ratio ** (k / (CANDIDATES - 1)));
  const right = centred(y);
  const decayOf = (tau: number) => centred(Number.isFinite(tau) ? s.map((at) => Math.exp(-at / tau)) : s.map((at) => -at / span));
  const near = fasts.map((tau) => alone(decayOf(tau), right));
  return slows.map((slow) => {
    const far = alone(decayOf(slow), right);
    let [best, most, liked] = [null as number | null, 0, false];
    for (let k = 0; k < fasts.length && fasts[k]! * APART < slow; k++) {
      const { drop, alike } = together(near[k]!, far, product(near[k]!.decay, far.decay));
      if ((alike && !liked && drop > 0) || (alike === liked && drop > most)) [best, most, liked] = [fasts[k]!, drop, alike];
    }
    return best;
  });
}

/** A centred decay, its own sum of squares, and its sum of products with the centred readings. */
interface Alone {
  readonly decay: Float64Array;
  readonly square: number;
  readonly along: number;
}

function alone(decay: Float64Array, right: Float64Array): Alone {
  return { decay, square: product(decay, decay), along: product(decay, right) };
}

/** By how much two decays make the sum of squares smaller; 0 where they are all but parallel or of unlike sign. */
function together(a: Alone, b: Alone, across: number) {
  const determinant = a.square * b.square - across * across;
  if (!(determinant > PARALLEL * a.square * b.square)) return { drop: 0, alike: false };
  const [first, second] = [b.square * a.along - across * b.along, a.square * b.along - across * a.along];
  return { drop: (first * a.along + second * b.along) / determinant, alike: first * second > 0 };
}

function centred(values: Float64Array): Float64Array {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return values.map((value) => value - sum / values.length);
}

function product(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
