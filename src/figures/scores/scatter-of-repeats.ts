/** How much the mean of a few repeats scatters. */
import type { Part } from '../../quantities/quantity.ts';
import { factorOfMean, repeatCorrelation } from '../../statistics/repeat-correlation.ts';
import type { Soak } from '../soak.ts';
import { samplingPart, stepPart } from '../sources.ts';

/**
 * Scatter of a mean over repeats, s/√n, never below step/√12: equal repeats still have their step (JCGM 100:2008, 4.2.3, F.2.2.1). `inflation` is
 * what repeats that go together add.
 */
export function repeatsPart(soak: Soak, address: string, spread: number, n: number, step: number, inflation = 1): Part {
  const u = (spread / Math.sqrt(n)) * inflation;
  const floor = step / Math.sqrt(12);
  return u > floor ? samplingPart(soak.context, address, u, n - 1) : stepPart(soak.context, address, step);
}

/** By how much s/√n of values in order is too small, as each is like the one before. */
export function repeatsInflation(values: readonly number[]): number {
  return factorOfMean(values.length, repeatCorrelation(values, 'mean'));
}
