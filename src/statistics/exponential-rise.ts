import { type LinearSolution, linearLeastSquares } from './linear-least-squares.ts';

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
/** Relative move of every time constant that need not be made. */
const STILL = 1e-10;
/** Relative move that rounding may hinder. */
const SETTLED = 1e-5;
/** Largest move of the logarithm of a time constant in one step. */
const LONGEST_STEP = 1;

/**
 * Least squares of one or more exponential rises, begun from time constants near the best ones. Only the time constants are searched
 * for; asymptote and amplitudes follow linearly for each of them (variable projection).
 *
 * When: inside `riseProfile`, which finds the start.
 * @param s time since the step, in any unit, and y, readings in any unit; finite, equally many
 * @param starts time constants to begin from, unit of s
 * @returns null where the exponentials cannot be told apart, or a time constant runs away
 * Source: Golub & Pereyra, SIAM Journal on Numerical Analysis 10, 1973, 413–432, in Gauss–Newton form with halved steps.
 * Cost: about five passes, each with one exponential a row and time constant.
 * @example
 * exponentialRise([0, 1, 2, 3], [0, 0.5, 0.75, 0.875], [1]).timeConstants[0] // 1.442695… (1 ÷ ln 2)
 */
export function exponentialRise(s: ArrayLike<number>, y: ArrayLike<number>, starts: readonly number[]): ExponentialRise | null {
  let here = solve(s, y, starts);
  for (let turn = 0; here && turn < MOST_STEPS; turn++) {
    if (here.moves.every((move) => Math.abs(move) < STILL)) break;
    const next = descend(s, y, here);
    if (!next) break;
    here = next;
  }
  return here?.moves.every((move) => Math.abs(move) < SETTLED) ? finish(s, y, here) : null;
}

interface State {
  readonly timeConstants: readonly number[];
  /** Sum of squares with the best asymptote and amplitudes for these time constants. */
  readonly rss: number;
  /** How far the logarithm of each time constant should move next. */
  readonly moves: readonly number[];
  /** Linear solution over the columns: its last parameters are the moves, times the amplitudes before them. */
  readonly step: LinearSolution;
}

function solve(s: ArrayLike<number>, y: ArrayLike<number>, timeConstants: readonly number[]): State | null {
  const { ones, decays, slopes } = columns(s, timeConstants);
  const step = linearLeastSquares([ones, ...decays, ...slopes], y);
  if (!step) return null;
  const count = timeConstants.length;
  const moves = timeConstants.map((_, j) => step.parameters[1 + count + j]! / step.parameters[1 + j]!);
  const rss = step.explained.slice(1 + count).reduce((sum, drop) => sum + drop, step.rss);
  return { timeConstants, rss, moves, step };
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
  const rows = s.length;
  const decays = timeConstants.map(() => new Float64Array(rows));
  const slopes = timeConstants.map(() => new Float64Array(rows));
  for (let j = 0; j < timeConstants.length; j++) {
    const [decay, slope, rate] = [decays[j]!, slopes[j]!, 1 / timeConstants[j]!];
    for (let i = 0; i < rows; i++) {
      decay[i] = Math.exp(-s[i]! * rate);
      slope[i] = s[i]! * rate * decay[i]!;
    }
  }
  return { ones: new Float64Array(rows).fill(1), decays, slopes };
}

function finish(s: ArrayLike<number>, y: ArrayLike<number>, { timeConstants, step }: State): ExponentialRise {
  const { decays } = columns(s, timeConstants);
  const [asymptote, ...rest] = step.parameters as [number, ...number[]];
  const coefficients = rest.slice(0, timeConstants.length);
  const residuals = new Float64Array(y.length).fill(-asymptote);
  for (let j = 0; j < decays.length; j++) {
    const [decay, coefficient] = [decays[j]!, coefficients[j]!];
    for (let i = 0; i < decay.length; i++) residuals[i]! -= coefficient * decay[i]!;
  }
  let rss = 0;
  for (let i = 0; i < residuals.length; i++) {
    residuals[i]! += y[i]!;
    rss += residuals[i]! * residuals[i]!;
  }
  // From the columns' own parameters to asymptote, amplitudes and time constants.
  const scales = [1, ...coefficients.map(() => -1), ...timeConstants.map((tau, j) => tau / coefficients[j]!)];
  return {
    asymptote,
    amplitudes: coefficients.map((value) => -value),
    timeConstants,
    residuals,
    rss,
    inverse: step.inverse.map((row, i) => row.map((value, j) => value * scales[i]! * scales[j]!)),
  };
}
