/** A gathered comparison → one of its page's plots, its downloads in the store. */
import { drawPlan } from '../../plots/draw.ts';
import type { Problem } from '../../problem.ts';
import { digestOf } from '../digest.ts';
import { kept } from '../plot-step.ts';
import type { PlotResult } from '../plot-task.ts';
import type { Store } from '../store.ts';
import type { Gathered } from './gathered.ts';
import { type ComparedPlotId, planOf } from './plans.ts';

export interface ComparedPlotTask {
  readonly step: 'compared-plot';
  readonly key: string;
  readonly id: ComparedPlotId;
  readonly gathered: Gathered;
}

export interface ComparedPlotResult {
  /** Null where the comparison has nothing to draw of the kind. */
  readonly plot: PlotResult | null;
  readonly problems: readonly Problem[];
}

/** A task with the key that covers it: its code, the plot, and all that was gathered (by its digest). */
export function comparedPlotTask(code: string, id: ComparedPlotId, gathered: Gathered, digest: string): ComparedPlotTask {
  return { step: 'compared-plot', key: digestOf(['compared-plot', code, id, digest]), id, gathered };
}

/** Draws one plot. */
export async function comparedPlotStep(store: Store, { id, gathered }: ComparedPlotTask): Promise<ComparedPlotResult> {
  const plan = planOf(id, gathered);
  if (plan === null) return { plot: null, problems: [] };
  const plot = kept(store, await drawPlan(plan, id, id, { title: `${plan.title}: ${gathered.title}` }));
  return { plot, problems: [] };
}
