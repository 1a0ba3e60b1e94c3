/** Figures of a device, from all that published notes reach of it: `devices/<id>/figures.json` is made of one map. */
import type { Figure } from '../figures/figure.ts';
import type { RepeatedRun } from '../figures/repeats/groups.ts';
import { repeatFigures } from '../figures/repeats/repeats.ts';
import { compareText } from '../problem.ts';
import type { Condition, Run } from '../register/register.ts';
import type { ComputedRun, Parts } from './pages/parts.ts';

/** How runs repeat and specimens differ. Runs that no published note reaches are not in it. */
export function deviceRepeats(parts: Parts, device: string): ReadonlyMap<string, Figure> {
  const runs = [...parts.runs.values()].filter(({ run }) => run.device === device);
  return repeatFigures(device, runs.map(repeatedRun));
}

function repeatedRun({ run, derived }: ComputedRun): RepeatedRun {
  return { run: run.id, specimen: run.specimen, date: run.date, likeness: likenessOf(run), figures: derived.figures };
}

/** Setting and conditions as one text, but for the ambient: that is what the day brought. Quantities count as what they are, not as written. */
function likenessOf({ setting, conditions }: Run): string {
  const said = [...setting.map(oneText), ...conditions.filter(({ name }) => name !== 'ambient').map(oneText)];
  return said.sort(compareText).join('\n');
}

function oneText({ name, text, quantity }: Condition): string {
  return `${name}: ${quantity ? `${quantity.value} ${quantity.unit}` : text}`;
}
