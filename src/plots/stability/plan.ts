/** Which settings passed and which failed: clock over voltage offset, with the stretch in which the boundary lies. */
import { hasPassed, type Setting, settingsOf } from '../../figures/stability/settings.ts';
import { error } from '../../problem.ts';
import type { AttemptsSubject } from '../drawing/drawn.ts';
import type { Plan, Planned, Planner } from '../drawing/plan.ts';
import { layOutStability } from './layout.ts';
import { stabilityAlt, stabilityCsv, stabilityMethod, stabilityTable, stabilityTitle } from './words.ts';

/** Between which clocks the boundary lies at one voltage offset. */
export interface Bracket {
  /** V */
  readonly offset: number;
  /** Hz; null where no clock passed, or none above a passed one failed. */
  readonly passed: number | null;
  readonly failed: number | null;
}

export interface Stability {
  readonly subject: AttemptsSubject;
  readonly settings: readonly Setting[];
  /** By voltage offset, ascending. */
  readonly brackets: readonly Bracket[];
}

/** Plans the settings of one attempts file. */
export const planStability: Planner = (request, _subjects, attempts = []): Planned => {
  const [subject] = attempts;
  const settings = subject ? settingsOf([subject.ladder]) : [];
  if (!subject || settings.length === 0) {
    return [
      error('no-attempts', request.place, 'there is no attempt to draw', {
        expected: 'a table of attempts with a row that can be used',
      }),
    ];
  }
  const stability: Stability = { subject, settings, brackets: bracketsOf(settings) };
  return {
    title: request.title ?? stabilityTitle(stability),
    alt: stabilityAlt(stability),
    method: stabilityMethod(stability),
    csv: stabilityCsv(stability),
    table: stabilityTable(stability),
    layOut: (size) => layOutStability(stability, size),
    shown: [],
  } satisfies Plan;
};

/** The highest clock that passed and the lowest above it that did not, at each offset: as the figures have them. */
function bracketsOf(settings: readonly Setting[]): Bracket[] {
  return [...new Set(settings.map(({ offset }) => offset))].map((offset) => {
    const here = settings.filter((setting) => setting.offset === offset);
    const passed = here.filter(hasPassed).at(-1)?.clock ?? null;
    const failed = here.find(({ clock }) => passed === null || clock > passed)?.clock ?? null;
    return { offset, passed, failed };
  });
}
