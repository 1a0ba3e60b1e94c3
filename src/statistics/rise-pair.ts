import { linearLeastSquares } from './linear-least-squares.ts';

/** Two exponential rises with a given slower time constant, the rest fitted: y = asymptote − Σ amplitude·exp(−s/τ). */
export interface RisePair {
  readonly fast: number;
  /** Infinity: the slower part is a straight line, `amplitudes[1]` is its rise over `span`, and `asymptote` is the line's start. */
  readonly slow: number;
  readonly asymptote: number;
  readonly amplitudes: readonly [number, number];
  readonly rss: number;
  /** (XᵀX)⁻¹ over asymptote, minus both amplitudes, and the logarithm of the faster time constant. */
  readonly inverse: readonly (readonly number[])[];
  /** How far that logarithm should still move. */
  readonly move: number;
}

const MOST_STEPS = 25;
/** Relative move of the faster time constant that need not be made. */
const STILL = 1e-6;
const LONGEST_STEP = 1;
/** The faster time constant keeps this factor from the slower one, where both exponentials would be one. */
const APART = 1.1;

/** Readings of a response that rises, and the shortest time constant that they can tell. */
export interface RiseData {
  /** Time since the step, never decreasing; and as many readings. Units: any. */
  readonly s: Float64Array;
  readonly y: Float64Array;
  readonly span: number;
  readonly shortest: number;
}

/**
 * Least squares of two exponential rises for a given slower time constant: only the faster one is searched for, from `start`;
 * asymptote and amplitudes follow linearly (variable projection). It cannot run away: the faster constant is kept between the
 * shortest that the readings can tell and the slower one.
 *
 * When: inside `riseProfile`, which walks along the slower time constant.
 * @param slow the slower time constant, unit of s; Infinity for a straight line
 * @returns null where the columns are parallel in doubles
 * Source: Golub & Pereyra, SIAM Journal on Numerical Analysis 10, 1973, 413–432, in Gauss–Newton form with halved steps.
 * Cost: about five linear fits of four columns.
 * @example
 * risePair({ s: Float64Array.from({ length: 13 }, (_, k) => k), y: Float64Array.from({ length: 13 }, (_, k) => 10 - 4 * Math.exp(-k) - 6 * Math.exp(-k / 5)), span: 12, shortest: 0.5 }, 5, 2).fast.toFixed(6) // '1.000000'
 */
export function risePair(data: RiseData, slow: number, start: number): RisePair | null {
  const most = Number.isFinite(slow) ? slow / APART : 2 * data.span;
  const kept = (fast: number) => Math.min(most, Math.max(data.shortest, fast));
  const decay = slowColumn(data, slow);
  let here = solve(data, slow, kept(start), decay);
  for (let turn = 0; here && turn < MOST_STEPS && Math.abs(here.move) > STILL; turn++) {
    const next = lower(data, here, decay, kept);
    if (!next) break;
    here = next;
  }
  return here;
}

/**
 * The same with both time constants given, so that nothing is searched for.
 * @example
 * risePairAt({ s: Float64Array.from({ length: 13 }, (_, k) => k), y: Float64Array.from({ length: 13 }, (_, k) => 10 - 4 * Math.exp(-k) - 6 * Math.exp(-k / 5)), span: 12, shortest: 0.5 }, 5, 1).asymptote.toFixed(6) // '10.000000'
 */
export function risePairAt(data: RiseData, slow: number, fast: number): RisePair | null {
  return solve(data, slow, fast, slowColumn(data, slow));
}

/** The next state along the move, halved until the sum of squares falls; null where it does not. */
function lower(data: RiseData, from: RisePair, decay: Float64Array, kept: (fast: number) => number): RisePair | null {
  let step = Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, from.move));
  for (let halving = 0; halving < 8; halving++, step /= 2) {
    const fast = kept(from.fast * Math.exp(step));
    if (fast === from.fast) return null;
    const next = solve(data, from.slow, fast, decay);
    if (next && next.rss < from.rss) return next;
  }
  return null;
}

function slowColumn({ s, span }: RiseData, slow: number): Float64Array {
  return Number.isFinite(slow) ? s.map((at) => Math.exp(-at / slow)) : s.map((at) => -at / span);
}

function solve({ s, y }: RiseData, slow: number, fast: number, decay: Float64Array): RisePair | null {
  const rows = s.length;
  const near = new Float64Array(rows);
  const slope = new Float64Array(rows);
  for (let i = 0; i < rows; i++) {
    near[i] = Math.exp(-s[i]! / fast);
    slope[i] = (s[i]! / fast) * near[i]!;
  }
  const linear = linearLeastSquares([new Float64Array(rows).fill(1), near, decay, slope], y);
  if (!linear) return null;
  const { parameters: p, inverse, explained } = linear;
  // Least squares without the last column, from that with it.
  const [asymptote, first, second] = [0, 1, 2].map((k) => p[k]! - (p[3]! * inverse[k]![3]!) / inverse[3]![3]!) as [
    number,
    number,
    number,
  ];
  const scale = 1 / (first || Number.MIN_VALUE);
  return {
    fast,
    slow,
    asymptote,
    amplitudes: [-first, -second],
    rss: linear.rss + explained[3]!,
    inverse: inverse.map((row, i) => row.map((value, j) => value * (i === 3 ? scale : 1) * (j === 3 ? scale : 1))),
    move: p[3]! * scale,
  };
}
