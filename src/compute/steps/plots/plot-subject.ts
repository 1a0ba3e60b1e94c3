/** A run with all that may be drawn of it, its Log from the store. */
import type { RunFigures } from '../../../figures/figure.ts';
import type { Surface } from '../../../figures/surface/surface-table.ts';
import type { Log } from '../../../intake/log.ts';
import type { PlotSubject } from '../../../plots/drawing/drawn.ts';
import type { Store } from '../../store/store.ts';
import { type RunResult, runStep, surfaceKey } from '../runs/run-step.ts';
import type { PlotSubjectTask } from './plot-task.ts';

/** Takes a run's stored Log; where the cache lost it, the run is read again. */
export function plotSubject(root: string, store: Store, alias: string, { title, run }: PlotSubjectTask): PlotSubject {
  const result = (store.get(run.key) as RunResult | undefined) ?? runStep(root, store, run);
  const log = store.get(result.log!) ?? store.get(runStep(root, store, run).log!);
  const common = { alias, title, log: log as Log, derived: result.derived as RunFigures, context: run.context };
  if (!run.tables.image) return common;
  if (store.get(surfaceKey(run)) === undefined) runStep(root, store, run);
  const surface = store.get(surfaceKey(run)) as Surface | undefined;
  return { ...common, ...(surface && { surface }) };
}
