/** Plots of a comparison for notes: what cannot be drawn becomes a located error. */
import { error } from '../../problem.ts';
import type { ComparedSubject } from '../drawing/drawn.ts';
import { isPlan, type Plan, type Planner, type Undrawn } from '../drawing/plan.ts';

/** A planner that draws the comparison of its request. */
export function comparedPlanner(planOf: (subject: ComparedSubject, title?: string) => Plan | Undrawn): Planner {
  return ({ kind, place, title }, _subjects, _attempts, compared) => {
    const planned = compared ? planOf(compared, title) : { why: 'There is no comparison.' };
    if (isPlan(planned)) return planned;
    return [
      error(
        'no-figures',
        place,
        `the comparison has nothing that a plot of the kind \`${kind}\` draws: ${planned.why.replace(/\.$/, '')}`,
        {
          expected: EXPECTED[kind] ?? 'figures of several runs',
        },
      ),
    ];
  };
}

const EXPECTED: Readonly<Record<string, string>> = {
  scaling: 'a run beside the reference of which scores and a clock are known',
  deltas: 'a run beside the reference of which power or rise over ambient is known',
  scores: 'a run beside the reference with scores of the same tests',
};
