/** Figures of a device, from all that published notes reach of it: `devices/<id>/figures.json` is made of one map. */
import type { Figure } from '../figures/figure.ts';
import type { RepeatedRun } from '../figures/repeats/groups.ts';
import { repeatFigures } from '../figures/repeats/repeats.ts';
import { likenessOf } from './likeness.ts';
import type { ComputedRun, Parts } from './pages/parts.ts';

/** How runs repeat and specimens differ. Runs that no published note reaches are not in it. */
export function deviceRepeats(parts: Parts, device: string): ReadonlyMap<string, Figure> {
  const runs = [...parts.runs.values()].filter(({ run }) => run.device === device);
  return repeatFigures(device, runs.map(repeatedRun));
}

/** Alike but for the ambient: that is what the day brought. */
function repeatedRun({ run, derived }: ComputedRun): RepeatedRun {
  const likeness = likenessOf(run, ['ambient']);
  return { run: run.id, specimen: run.specimen, date: run.date, likeness, figures: derived.figures };
}
