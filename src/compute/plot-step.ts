/** A request and the Logs it names → a drawn plot, its downloads in the store. */
import type { RunFigures } from '../figures/figure.ts';
import type { Log } from '../intake/log.ts';
import { draw } from '../plots/draw.ts';
import type { Drawn, PlotSubject } from '../plots/drawn.ts';
import type { PlotResult, PlotSubjectTask, PlotTask } from './plot-task.ts';
import { type RunResult, runStep } from './run-step.ts';
import type { Store } from './store.ts';

/** Draws one plot. */
export async function plotStep(root: string, store: Store, task: PlotTask): Promise<PlotResult> {
  const subjects = task.subjects.map((subject, index) => plotSubject(root, store, task.request.runs[index]!.alias, subject));
  return kept(store, await draw(task.request, subjects, task.request.id, task.attempts));
}

function kept(store: Store, { wide, narrow, svg, png, csv, ...drawn }: Drawn): PlotResult {
  return {
    ...drawn,
    inline: { wide: store.keep(wide), narrow: store.keep(narrow) },
    files: { svg: store.keep(svg), png: store.keep(Buffer.from(png, 'base64')), csv: store.keep(csv) },
  };
}

/** Takes a run's stored Log; where the cache lost it, the run is read again. */
function plotSubject(root: string, store: Store, alias: string, { title, run }: PlotSubjectTask): PlotSubject {
  const result = (store.get(run.key) as RunResult | undefined) ?? runStep(root, store, run);
  const log = store.get(result.log!) ?? store.get(runStep(root, store, run).log!);
  return { alias, title, log: log as Log, derived: result.derived as RunFigures, context: run.context };
}
