/** A request and the Logs it names → a drawn plot, its downloads in the store. */
import type { RunFigures } from '../figures/figure.ts';
import type { Log } from '../intake/log.ts';
import type { Drawn, PlotSubject } from '../plots/drawn.ts';
import type { PlotRequest } from '../register/requests.ts';
import { digestOf } from './digest.ts';
import { type RunResult, type RunTask, runStep } from './run-step.ts';
import type { Store } from './store.ts';

export interface PlotTask {
  readonly step: 'plot';
  readonly key: string;
  readonly request: PlotRequest;
  /** Its runs, in the request's order. */
  readonly subjects: readonly PlotSubjectTask[];
}

export interface PlotSubjectTask {
  readonly title: string;
  readonly run: RunTask;
}

/** A Drawn whose downloads are in the store. */
export interface PlotResult extends Omit<Drawn, 'svg' | 'png' | 'csv'> {
  readonly files: { readonly svg: string; readonly png: string; readonly csv: string };
}

/** A task with the key that covers it: its code, what was asked for, and the results it is drawn from. */
export function plotTask(code: string, request: PlotRequest, subjects: readonly PlotSubjectTask[]): PlotTask {
  const { place: _place, ...asked } = request;
  const key = digestOf(['plot', code, asked, subjects.map(({ title, run }) => [title, run.key])]);
  return { step: 'plot', key, request, subjects };
}

/** Draws one plot. Vega is loaded with the first one, so that a build without plots to draw does not pay for it. */
export async function plotStep(root: string, store: Store, task: PlotTask): Promise<PlotResult> {
  const { draw } = await import('../plots/draw.ts');
  const subjects = task.subjects.map((subject, index) => plotSubject(root, store, task.request.runs[index]!.alias, subject));
  const { svg, png, csv, ...drawn } = await draw(task.request, subjects, task.request.id);
  return { ...drawn, files: { svg: store.keep(svg), png: store.keep(Buffer.from(png, 'base64')), csv: store.keep(csv) } };
}

/** Takes a run's stored Log; where the cache lost it, the run is read again. */
function plotSubject(root: string, store: Store, alias: string, { title, run }: PlotSubjectTask): PlotSubject {
  const result = (store.get(run.key) as RunResult | undefined) ?? runStep(root, store, run);
  const log = store.get(result.log!) ?? store.get(runStep(root, store, run).log!);
  return { alias, title, log: log as Log, derived: result.derived as RunFigures, context: run.context };
}
