/** A gathered comparison → one of its page's plots, its downloads in the store. */
import { drawPlan } from '../../../plots/draw.ts';
import { isPlan } from '../../../plots/drawing/plan.ts';
import type { Store } from '../../store/store.ts';
import { planOf } from './comparison-plans.ts';
import type { ComparedPlotResult, ComparedPlotTask } from './comparison-plot-task.ts';
import { storePlot } from './plot-step.ts';

/** Draws one plot. */
export async function comparedPlotStep(store: Store, { id, gathered, pictured }: ComparedPlotTask): Promise<ComparedPlotResult> {
  const plan = planOf(id, gathered);
  if (!isPlan(plan)) return { plot: null, why: plan.why, problems: [] };
  const plot = storePlot(store, await drawPlan(plan, id, id, { title: `${plan.title}: ${gathered.title}`, png: true, pictured }));
  return { plot, why: '', problems: [] };
}
