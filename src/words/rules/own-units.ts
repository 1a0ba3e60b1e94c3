/** The units that the scores of a note's subjects are in, as their author wrote them: `runs/s`, `points`. */
import { isPresent } from '../../figures/figure.ts';
import { readUnit } from '../../quantities/units.ts';
import type { Subjects } from '../expression/address.ts';

export function ownUnits(subjects: Subjects): ReadonlySet<string> {
  const units = new Set<string>();
  for (const { figures } of subjects.values()) {
    for (const figure of figures.values()) {
      if (isPresent(figure) && figure.name === 'score' && !readUnit(figure.quantity.unit)) units.add(figure.quantity.unit);
    }
  }
  return units;
}
