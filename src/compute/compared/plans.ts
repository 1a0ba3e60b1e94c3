/** The plots of a comparison's page, in its order, and how each is planned from what was gathered. */
import type { Plan } from '../../plots/plan.ts';
import type { Gathered } from './gathered.ts';

export const COMPARED_PLOTS = ['temperature', 'rise', 'clock', 'power', 'scaling', 'deltas', 'scores'] as const;
export type ComparedPlotId = (typeof COMPARED_PLOTS)[number];

/** The plan of a plot; null where there is nothing to draw. */
export function planOf(_id: ComparedPlotId, _gathered: Gathered): Plan | null {
  return null;
}
