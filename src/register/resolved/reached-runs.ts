/** What a comparison rests on. */
import type { Comparison } from '../register.ts';

/** Ids of all runs that the figures of a comparison are computed from: those compared, then those that only say how runs repeat. */
export function reachedRuns({ runs, repeats }: Pick<Comparison, 'runs' | 'repeats'>): string[] {
  return [...runs.values(), ...repeats];
}
