/** Propagation: what a result of several quantities inherits of their uncertainty (JCGM 100:2008, 5.2, eq. 16 with named sources). */
import { compareText } from '../problem.ts';
import type { Part, Quantity, Source } from './quantity.ts';

/** An operand with the partial derivative of the result by it. */
export interface Term {
  readonly quantity: Quantity;
  readonly sensitivity: number;
}

/**
 * A result with the parts of all operands, in one pass. `value` and `unit` are the result's own; a sensitivity has the unit of the
 * result ÷ the unit of its operand (K where that is °C). One unknown uncertainty makes the result's unknown; one operand of
 * repeatability only makes the result so; the step is the coarsest of the operands' steps as they show in the result.
 */
export function combine(value: number, unit: string, terms: readonly Term[]): Quantity {
  return qualified(
    { value, unit, parts: mergedParts(terms) },
    terms.map(({ quantity }) => quantity),
    shownStep(terms),
  );
}

/** Adds what several quantities say besides value and parts. */
export function qualified(bare: Quantity, operands: readonly Quantity[], step: number | undefined): Quantity {
  return {
    ...bare,
    ...(operands.some(({ repeatabilityOnly }) => repeatabilityOnly) && { repeatabilityOnly: true }),
    ...(step !== undefined && { step }),
  };
}

function shownStep(terms: readonly Term[]): number | undefined {
  let coarsest = 0;
  for (const { quantity, sensitivity } of terms) coarsest = Math.max(coarsest, Math.abs(sensitivity) * (quantity.step ?? 0));
  return coarsest > 0 && Number.isFinite(coarsest) ? coarsest : undefined;
}

/** Shares by source, sorted by id; contributions to one source are added smallest first, so that the order of operands leaves no trace. */
function mergedParts(terms: readonly Term[]): readonly Part[] | null {
  const sources = new Map<string, { readonly source: Source; readonly shares: number[] }>();
  for (const { quantity, sensitivity } of terms) {
    if (quantity.parts === null) return null;
    for (const { source, share } of quantity.parts) {
      const entry = sources.get(source.id);
      if (entry) entry.shares.push(sensitivity * share);
      else sources.set(source.id, { source, shares: [sensitivity * share] });
    }
  }
  const parts = [...sources.values()].map(({ source, shares }) => ({ source, share: sumSorted(shares) }));
  return parts.filter(({ share }) => share !== 0).sort((a, b) => compareText(a.source.id, b.source.id));
}

/** Sum in ascending order: the same bits whatever order the numbers came in. */
export function sumSorted(numbers: readonly number[]): number {
  if (numbers.length === 1) return numbers[0]!;
  return [...numbers].sort((a, b) => a - b).reduce((sum, number) => sum + number, 0);
}
