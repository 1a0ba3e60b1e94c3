import { mean } from './mean.ts';
import { sampleDeviation } from './sample-deviation.ts';
import { studentTail } from './student-tail.ts';
import { welchSatterthwaite } from './welch-satterthwaite.ts';

/** Comparison of two means. */
export interface WelchTest {
  /** Mean of the first sample less that of the second. */
  readonly difference: number;
  /** Standard uncertainty of the difference. */
  readonly u: number;
  /** difference ÷ u; NaN where both samples are constant and equal. */
  readonly t: number;
  /** Not truncated. */
  readonly dof: number;
  /** Two-sided probability of a difference at least this large between equal means. */
  readonly p: number;
}

/**
 * Welch's test: difference of two means of independent samples whose spreads may differ.
 *
 * When: to tell whether two sets of repeats differ. The 95 % interval of the difference is difference ± studentQuantile(0.975, dof)·u.
 * @param a two or more finite numbers. Unit: any.
 * @param b two or more finite numbers, same unit
 * @throws RangeError for fewer than two values, or one that is not finite
 * Source: B. L. Welch, Biometrika 34, 1947, 28–35; NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.3.
 * Cost: four passes over each.
 * @example
 * welch([1, 2, 3], [2, 3, 4]).difference // -1
 * welch([1, 2, 3], [2, 3, 4]).dof // 4
 */
export function welch(a: ArrayLike<number>, b: ArrayLike<number>): WelchTest {
  const parts = [a, b].map((sample) => ({ u: sampleDeviation(sample) / Math.sqrt(sample.length), dof: sample.length - 1 }));
  const difference = mean(a) - mean(b);
  const u = Math.hypot(...parts.map((part) => part.u));
  const dof = welchSatterthwaite(parts);
  const t = difference / u;
  return { difference, u, t, dof, p: twoSided(t, dof) };
}

function twoSided(t: number, dof: number): number {
  if (Number.isNaN(t)) return Number.NaN;
  return Number.isFinite(t) ? 2 * studentTail(Math.abs(t), dof).above : 0;
}
