/** How much the mean of a few repeats scatters. */
import type { Part } from '../../quantities/quantity.ts';
import type { Soak } from '../soak.ts';
import { samplingPart, stepPart } from '../sources.ts';

/** Scatter of a mean over repeats, s/√n, never below step/√12: equal repeats still have their step (JCGM 100:2008, 4.2.3, F.2.2.1). */
export function repeatsPart(soak: Soak, address: string, spread: number, n: number, step: number): Part {
  const u = spread / Math.sqrt(n);
  const floor = step / Math.sqrt(12);
  return u > floor ? samplingPart(soak.context, address, u, n - 1) : stepPart(soak.context, address, step);
}
