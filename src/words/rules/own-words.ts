/** What a note's subjects tell of the words around a number. */
import { isPresent } from '../../figures/figure.ts';
import { readUnit } from '../../quantities/units.ts';
import type { Subjects } from '../expression/address.ts';
import type { OwnWords } from './find-unheld.ts';

/** The units of scores as their author wrote them (`runs/s`, `points`), the short names of the runs, and titles. */
export function ownWords(subjects: Subjects): OwnWords {
  const units = new Set<string>();
  for (const { figures } of subjects.values()) {
    for (const figure of figures.values()) {
      if (isPresent(figure) && figure.name === 'score' && !readUnit(figure.quantity.unit)) units.add(figure.quantity.unit);
    }
  }
  const runs = [...subjects].filter(([, { kind }]) => kind === 'run').map(([alias]) => alias.toLowerCase());
  const titles = [...subjects.values()].flatMap(({ title, names }) => [title, names?.get('device') ?? '']);
  return { units, runs: new Set(runs), titles: titles.map((title) => title.toLowerCase()) };
}
