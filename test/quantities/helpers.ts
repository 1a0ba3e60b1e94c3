/** Shared by the tests of this folder. */
import fc from 'fast-check';
import { expect } from 'vitest';
import { isRefusal, type Refusal } from '../../src/quantities/arithmetic.ts';
import type { Part, Quantity, Source } from '../../src/quantities/quantity.ts';
import { standardUncertainty } from '../../src/quantities/uncertainty.ts';

export function source(id: string, dof: number | null = null): Source {
  return { id, title: id, dof };
}

/** The quantity, or a failed test that says what was refused. */
export function got(result: Quantity | Refusal): Quantity {
  if (isRefusal(result)) throw new Error(`refused: ${result.refused}`);
  return result;
}

export function u(result: Quantity | Refusal): number {
  return standardUncertainty(got(result)) ?? Number.NaN;
}

/** Relative comparison; Vitest's toBeCloseTo is absolute. */
export function expectClose(actual: number, expected: number, relative = 1e-9): void {
  const error = Math.abs(actual - expected) / Math.max(Math.abs(expected), Number.MIN_VALUE);
  expect(error, `${actual} is not within ${relative} of ${expected}`).toBeLessThanOrEqual(relative);
}

/** Correlation of two quantities through the sources that they share (JCGM 100:2008, 5.2.2). */
export function correlation(a: Quantity, b: Quantity): number {
  const shares = new Map((b.parts ?? []).map(({ source: { id }, share }) => [id, share]));
  const covariance = (a.parts ?? []).reduce((sum, { source: { id }, share }) => sum + share * (shares.get(id) ?? 0), 0);
  return covariance / (u(a) * u(b));
}

const number = fc.double({ min: -1e6, max: 1e6, noNaN: true }).map((value) => (Math.abs(value) < 1e-3 ? 0 : value));

/** Quantities in a unit over a few sources, some shared, some exact. */
export function anyQuantity(unit = 'W'): fc.Arbitrary<Quantity> {
  const shares = fc.uniqueArray(fc.tuple(fc.constantFrom('a', 'b', 'c', 'd/1', 'd/2'), number), {
    selector: ([id]) => id,
    maxLength: 5,
  });
  return fc.tuple(number, shares).map(([value, drawn]) => ({ value, unit, parts: partsOf(drawn) }));
}

function partsOf(drawn: readonly (readonly [string, number])[]): Part[] {
  return drawn
    .filter(([, share]) => share !== 0)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([id, share]) => ({ source: source(id), share }));
}
