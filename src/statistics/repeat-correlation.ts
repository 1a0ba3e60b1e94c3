import { autocorrelation } from './autocorrelation.ts';
import { mean } from './mean.ts';
import { normalQuantile } from './normal-quantile.ts';

/** Fewer repeats cannot tell how much each is like the one before. */
const LEAST = 8;
/** Quantile of the normal distribution at 95 %: one side of the test for a correlation above zero. */
const ONE_SIDED = normalQuantile(0.95);
/** More is not told from so few: the level itself wanders off. */
const GREATEST = 0.9;
/** A parabola that takes this share of the squares is a drift, not repeats that go together. */
const DRIFT = 0.85;
/** Powers of the correlation below this no longer count. */
const NEGLIGIBLE = 1e-9;

/**
 * Correlation of each repeat with the one before, about their mean or about a straight line through them; 0 where a test at 5 % finds none, or
 * there are fewer than eight. The small-sample bias of the coefficient, −(1 + 3ρ)/n about a mean and −(2 + 4ρ)/n about a line, is taken out.
 *
 * When: before repeats are taken as independent. Repeats that a parabola explains (85 % of the squares) count as drifting, not as correlated. Values that only rise or only fall were sorted, or drift.
 * @param values finite numbers, in order. Unit: any.
 * @returns a number in 0 … 0.9 (unit 1)
 * Source: M. G. Kendall, Biometrika 41 (1954), 403–404, for the bias; variance (n − 2)²/(n²(n − 1)) of the coefficient of independent
 * normal values: P. A. P. Moran, Biometrika 35 (1948), 255–260 (both from memory; held against simulation in the tests).
 * Cost: a few passes.
 * @example
 * repeatCorrelation([1, 2, 3], 'mean') // 0
 */
export function repeatCorrelation(values: ArrayLike<number>, about: 'mean' | 'line'): number {
  const n = values.length;
  if (n < LEAST) return 0;
  if (about === 'mean' && isSorted(values)) return 0;
  const line = left(values, [1]);
  const own = about === 'line' ? line : values;
  const lost = about === 'line' ? 2 : 1;
  const r = autocorrelation(own, 1);
  const critical = limitOf(n, lost);
  if (!(r > critical)) return 0;
  const parabola = left(line, [2]);
  if (squares(parabola) <= (1 - DRIFT) * squares(left(values, []))) return 0;
  return Math.min(GREATEST, (r + lost / n) / (1 - (lost + 2) / n));
}

/**
 * By how much the standard uncertainty of Σ wᵢyᵢ, told from the scatter of y as if its values were independent, is too small where each goes
 * with the one before by ρ: neighbours repeat each other, and scatter less about their own mean (or line) than about what is true.
 * @param weights those of the values, in order
 * @param shapes orthonormal vectors of what the scatter is told about: one for a mean, two for a line
 * @example
 * correlatedFactor([0.5, 0.5], [[Math.SQRT1_2, Math.SQRT1_2]], 0) // 1
 */
export function correlatedFactor(weights: ArrayLike<number>, shapes: readonly ArrayLike<number>[], rho: number): number {
  if (!(rho > 0)) return 1;
  const n = weights.length;
  const taken = shapes.reduce((sum, shape) => sum + quadratic(shape, rho), 0);
  const scatter = (n - taken) / (n - shapes.length);
  return Math.sqrt(quadratic(weights, rho) / quadratic(weights, 0) / scatter);
}

/**
 * `correlatedFactor` of a plain mean of `n` values that are told about it.
 * @example
 * factorOfMean(10, 0) // 1
 */
export function factorOfMean(n: number, rho: number): number {
  if (!(rho > 0) || n < 2) return 1;
  const even = new Float64Array(n).fill(1 / Math.sqrt(n));
  return correlatedFactor(even, [even], rho);
}

function isSorted(values: ArrayLike<number>): boolean {
  const changes = Array.from({ length: values.length - 1 }, (_, i) => values[i + 1]! - values[i]!);
  return changes.every((change) => change >= 0) || changes.every((change) => change <= 0);
}

/** Σ wᵢwⱼ ρ^|i−j|. */
function quadratic(weights: ArrayLike<number>, rho: number): number {
  const n = weights.length;
  let total = 0;
  for (let lag = 0, power = 1; lag < n && power > NEGLIGIBLE; lag++, power *= rho) {
    let sum = 0;
    for (let i = 0; i + lag < n; i++) sum += weights[i]! * weights[i + lag]!;
    total += (lag === 0 ? 1 : 2) * power * sum;
  }
  return total;
}

/** 95 % of independent normal values have a coefficient below this, about as many parameters as `lost`. */
function limitOf(n: number, lost: number): number {
  return -lost / n + (ONE_SIDED * (n - 2)) / (n * Math.sqrt(n - 1));
}

/** What the mean and orthogonal polynomials of the given degrees (1, 2) leave of evenly spaced values. */
function left(values: ArrayLike<number>, degrees: readonly (1 | 2)[]): number[] {
  const n = values.length;
  const level = mean(values);
  let rest = Array.from(values, (value) => value - level);
  for (const degree of degrees) {
    const shape = rest.map((_, i) => (i - (n - 1) / 2) ** degree - (degree === 2 ? (n * n - 1) / 12 : 0));
    const share = rest.reduce((sum, value, i) => sum + value * shape[i]!, 0) / squares(shape);
    rest = rest.map((value, i) => value - share * shape[i]!);
  }
  return rest;
}

function squares(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value * value, 0);
}
