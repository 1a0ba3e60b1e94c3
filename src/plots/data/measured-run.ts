/** A run as the figures see it, so that plots draw with the figures' own functions. */
import type { Soak } from '../../figures/soak.ts';
import type { PlotSubject } from '../drawing/drawn.ts';

export function soakOf({ log, context, derived }: PlotSubject): Soak {
  return { log, context, phases: derived.phases, inferred: [] };
}
