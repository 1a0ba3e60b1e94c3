/** The uncertainty of a quantity: made from a statement, and read from its parts (JCGM 100:2008, 5.1, 6 and Annex G). */
import { uniformStudentHalfWidth } from '../statistics/uniform-student.ts';
import { welchSatterthwaite } from '../statistics/welch-satterthwaite.ts';
import type { Part, Quantity, Source } from './quantity.ts';

/** A value without uncertainty: a setting, a rating, a count. */
export function exact(value: number, unit: string): Quantity {
  return { value, unit, parts: [] };
}

/** A value whose uncertainty has one source. `u` is a standard uncertainty in `unit` (K where that is °C), 0 or above, else a RangeError. */
export function independent(value: number, unit: string, u: number, source: Source): Quantity {
  if (!(u >= 0) || u === Number.POSITIVE_INFINITY)
    throw new RangeError(`a standard uncertainty is 0 or above and finite, got ${u}`);
  return { value, unit, parts: u === 0 ? [] : [{ source, share: u }] };
}

/** A value whose uncertainty nobody stated. */
export function unknown(value: number, unit: string): Quantity {
  return { value, unit, parts: null };
}

/** Combined standard uncertainty: root sum of squares of the shares, in the order of the parts. In the unit of the quantity (K where it is °C); null = unknown. */
export function standardUncertainty(quantity: Quantity): number | null {
  if (quantity.parts === null) return null;
  if (quantity.parts.length === 1) return Math.abs(quantity.parts[0]!.share);
  return Math.sqrt(quantity.parts.reduce((sum, { share }) => sum + share * share, 0));
}

/**
 * Effective degrees of freedom (Welch–Satterthwaite, JCGM 100:2008, G.4.1), not truncated; null = infinitely many, or uncertainty unknown.
 * Sources `…/1`, `…/2` of one fit are columns of one covariance estimated from the same residuals, so they count as one contribution
 * (Willink, Metrologia 44 (2007) 340, from memory).
 */
export function degreesOfFreedom(quantity: Quantity): number | null {
  const estimates = new Map<string, { variance: number; dof: number }>();
  for (const part of quantity.parts ?? []) {
    const name = part.source.dof === null ? part.source.id : estimateOf(part);
    const variance = (estimates.get(name)?.variance ?? 0) + part.share * part.share;
    estimates.set(name, { variance, dof: part.source.dof ?? Number.POSITIVE_INFINITY });
  }
  const dof = welchSatterthwaite([...estimates.values()].map(({ variance, dof }) => ({ u: Math.sqrt(variance), dof })));
  return dof === Number.POSITIVE_INFINITY ? null : dof;
}

function estimateOf({ source }: Part): string {
  return `${source.id.replace(/\/\d+$/, '')} ${source.dof}`;
}

/**
 * Half width of the 95 % interval, or of one of another `level`. Unit as u; null = unknown. Student's t for the effective degrees of freedom × u (JCGM 100:2008, G.3);
 * where a source is rectangular, the largest such is propagated as a distribution together with everything else, which is taken as
 * Student's t with the degrees of freedom of the rest (JCGM 101:2008, 5.6.2, 6.4.2, 6.4.9). So limits alone give 0.95 of their half width.
 * Further rectangular sources count as normal: then the interval is at most 1.4 % too narrow and at most 1.1 % too wide.
 */
export function expandedUncertainty(quantity: Quantity, level = 0.95): number | null {
  const u = standardUncertainty(quantity);
  if (u === null || u === 0) return u;
  const limits = largestRectangular(quantity.parts ?? []);
  const rest: Quantity = { ...quantity, parts: (quantity.parts ?? []).filter((part) => part !== limits) };
  const halfWidth = Math.sqrt(3) * Math.abs(limits?.share ?? 0);
  const dof = degreesOfFreedom(rest) ?? Number.POSITIVE_INFINITY;
  return uniformStudentHalfWidth(level, halfWidth, standardUncertainty(rest) ?? 0, dof);
}

function largestRectangular(parts: readonly Part[]): Part | undefined {
  let largest: Part | undefined;
  for (const part of parts) {
    if (part.source.distribution !== 'rectangular') continue;
    if (largest === undefined || Math.abs(part.share) > Math.abs(largest.share)) largest = part;
  }
  return largest;
}

/** The 95 % interval in the quantity's unit; both ends the value where it is exact, null where the uncertainty is unknown. */
export function interval95(quantity: Quantity): readonly [number, number] | null {
  const half = expandedUncertainty(quantity);
  return half === null ? null : [quantity.value - half, quantity.value + half];
}
