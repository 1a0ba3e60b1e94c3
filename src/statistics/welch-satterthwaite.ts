/** One independent contribution to a combined standard uncertainty. */
export interface Contribution {
  /** Sensitivity × standard uncertainty, in the unit of the result; the sign does not matter. */
  readonly u: number;
  /** Degrees of freedom of that uncertainty; Infinity for a stated limit. */
  readonly dof: number;
}

/**
 * Effective degrees of freedom of a combined standard uncertainty: u⁴ ÷ Σ(uᵢ⁴/νᵢ).
 *
 * When: independent contributions whose uncertainties were themselves estimated, before taking Student's t for an interval.
 * @param contributions independent ones. Contributions of zero count for nothing.
 * @returns degrees of freedom, not truncated (unit 1); Infinity where no contribution has finitely many
 * @throws RangeError for an uncertainty that is not finite, or degrees of freedom that are not above zero
 * Source: JCGM 100:2008, G.4.1, eq. G.2b.
 * Cost: one pass.
 * @example
 * welchSatterthwaite([{ u: 1, dof: 4 }, { u: 1, dof: 4 }]) // 8
 */
export function welchSatterthwaite(contributions: readonly Contribution[]): number {
  const largest = contributions.reduce((most, { u }) => Math.max(most, Math.abs(u)), 0);
  let variance = 0;
  let spread = 0;
  for (const { u, dof } of contributions) {
    if (!Number.isFinite(u)) throw new RangeError(`u is ${u}, expected a finite number`);
    if (!(dof > 0)) throw new RangeError(`dof is ${dof}, expected a number above zero`);
    if (u === 0) continue;
    const square = (u / largest) ** 2;
    variance += square;
    spread += (square * square) / dof;
  }
  return spread === 0 ? Number.POSITIVE_INFINITY : (variance * variance) / spread;
}
