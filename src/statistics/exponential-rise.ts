import { linearLeastSquares } from './linear-least-squares.ts';

/** y = asymptote − Σ amplitude·exp(−s/τ), fitted with every row. */
export interface ExponentialRise {
  readonly asymptote: number;
  readonly amplitudes: readonly number[];
  /** In the order of the starts. */
  readonly timeConstants: readonly number[];
  readonly residuals: Float64Array;
  readonly rss: number;
  /** (XᵀX)⁻¹ over asymptote, amplitudes, time constants. */
  readonly inverse: readonly (readonly number[])[];
}

const MOST_STEPS = 60;
/** Relative move of every time constant that no longer counts. */
const STILL = 1e-11;
/** Largest move of the logarithm of a time constant in one step. */
const LONGEST_STEP = 1;

/**
 * Least squares of one or more exponential rises, begun from time constants near the best ones. Only the time constants are searched
 * for; asymptote and amplitudes follow linearly for each of them (variable projection).
 *
 * When: inside `stepResponse` and `twoTimeConstants`, which find the start.
 * @param s time since the step, in any unit, and y, readings in any unit; finite, equally many
 * @param starts time constants to begin from, unit of s
 * @returns null where the exponentials cannot be told apart, or a time constant runs away
 * Source: Golub & Pereyra, SIAM Journal on Numerical Analysis 10, 1973, 413–432, in Gauss–Newton form with halved steps.
 * Cost: about five passes, each with one exponential a row and time constant.
 */
export function exponentialRise(s: ArrayLike<number>, y: ArrayLike<number>, starts: readonly number[]): ExponentialRise | null {
  let here = solve(s, y, starts);
  for (let turn = 0; here && turn < MOST_STEPS; turn++) {
    const next = descend(s, y, here);
    if (!next) return here.moves.every((move) => Math.abs(move) < 1e-6) ? finish(s, y, here) : null;
    const still = next.moves.every((move) => Math.abs(move) < STILL);
    here = next;
    if (still) return finish(s, y, here);
  }
  return null;
}

interface State {
  readonly timeConstants: readonly number[];
  /** Best linear parameters: asymptote, then minus each amplitude. */
  readonly linear: readonly number[];
  readonly rss: number;
  /** How far the logarithm of each time constant should move next. */
  readonly moves: readonly number[];
}

function solve(s: ArrayLike<number>, y: ArrayLike<number>, timeConstants: readonly number[]): State | null {
  const { ones, decays, slopes } = columns(s, timeConstants);
  const best = linearLeastSquares([ones, ...decays], y);
  const step = linearLeastSquares([ones, ...decays, ...slopes], y);
  if (!best || !step) return null;
  const count = timeConstants.length;
  const moves = timeConstants.map((_, j) => step.parameters[1 + count + j]! / best.parameters[1 + j]!);
  return { timeConstants, linear: best.parameters, rss: best.rss, moves };
}

/** Next state along the moves, halved until the sum of squares does not grow; null where no step helps. */
function descend(s: ArrayLike<number>, y: ArrayLike<number>, from: State): State | null {
  const largest = from.moves.reduce((most, move) => Math.max(most, Math.abs(move)), 0);
  if (!Number.isFinite(largest)) return null;
  let scale = Math.min(1, LONGEST_STEP / (largest || 1));
  for (let halving = 0; halving < 12; halving++, scale /= 2) {
    const next = solve(
      s,
      y,
      from.timeConstants.map((tau, j) => tau * Math.exp(scale * from.moves[j]!)),
    );
    if (next && next.rss <= from.rss * (1 + 1e-12)) return next;
  }
  return null;
}

/** Columns of the model by asymptote, by minus each amplitude, and by the logarithm of each time constant at amplitude −1. */
function columns(s: ArrayLike<number>, timeConstants: readonly number[]) {
  const ones = new Float64Array(s.length).fill(1);
  const decays = timeConstants.map((tau) => Float64Array.from(s, (at) => Math.exp(-at / tau)));
  const slopes = timeConstants.map((tau, j) => decays[j]!.map((decay, i) => (s[i]! / tau) * decay));
  return { ones, decays, slopes };
}

function finish(s: ArrayLike<number>, y: ArrayLike<number>, state: State): ExponentialRise | null {
  const { timeConstants, linear } = state;
  const { ones, decays, slopes } = columns(s, timeConstants);
  const residuals = Float64Array.from(y, (value, i) =>
    decays.reduce((rest, decay, j) => rest - linear[1 + j]! * decay[i]!, value - linear[0]!),
  );
  const byAmplitude = decays.map((decay) => decay.map((value) => -value));
  const byTime = slopes.map((slope, j) => slope.map((value) => (value * linear[1 + j]!) / timeConstants[j]!));
  const inverse = linearLeastSquares([ones, ...byAmplitude, ...byTime], residuals)?.inverse;
  if (!inverse) return null;
  const rss = residuals.reduce((sum, r) => sum + r * r, 0);
  return { asymptote: linear[0]!, amplitudes: linear.slice(1).map((value) => -value), timeConstants, residuals, rss, inverse };
}
