/** A worker thread of stage 1: takes tasks one at a time, stores what a later build can use again, answers. */
import { parentPort, workerData } from 'node:worker_threads';
import { keepCompiled } from '../store/compile-cache.ts';
import { memoAsync, recording } from '../store/memo.ts';
import { isMomentary } from '../store/momentary-problems.ts';
import { type Attachments, openStore, type Store } from '../store/store.ts';
import type { ComparedPlotResult, ComparedPlotTask } from './plots/comparison-plot-task.ts';
import type { PlotResult, PlotTask } from './plots/plot-task.ts';
import type { RunResult, RunTask } from './runs/run-step.ts';
import type { SeriesResult, SeriesTask } from './series/series-step.ts';
import type { ShareResult, ShareTask } from './shares/share-task.ts';

export type Task = RunTask | SeriesTask | PlotTask | ComparedPlotTask | ShareTask;
type Result = RunResult | SeriesResult | PlotResult | ComparedPlotResult | ShareResult;
export type Answer<T extends Task> = T extends RunTask
  ? RunResult
  : T extends SeriesTask
    ? SeriesResult
    : T extends ComparedPlotTask
      ? ComparedPlotResult
      : T extends ShareTask
        ? ShareResult
        : PlotResult;

const { root } = workerData as { root: string };
keepCompiled(root);
const store = openStore(root);

async function perform(task: Task): Promise<{ readonly answer: Result; readonly used: Attachments }> {
  const used = recording(store);
  const lasts = ({ problems }: Result) => !problems.some(isMomentary);
  const answer = await memoAsync(used, task.key, (own) => resultOf(own, task), lasts);
  return { answer, used: used.used() };
}

/** The steps are loaded with the first task of their kind: Vega, for one, is not loaded for a build without plots to draw. */
async function resultOf(own: Store, task: Task): Promise<Result> {
  if (task.step === 'run') return (await import('./runs/run-step.ts')).runStep(root, own, task);
  if (task.step === 'series') return (await import('./series/series-step.ts')).seriesStep(root, own, task);
  if (task.step === 'compared-plot') return (await import('./plots/comparison-plot-step.ts')).comparedPlotStep(own, task);
  if (task.step === 'share') return (await import('./shares/share-step.ts')).shareStep(own, task);
  return (await import('./plots/plot-step.ts')).plotStep(root, own, task);
}

parentPort!.on('message', (task: Task) => {
  perform(task).then(
    (made) => parentPort!.postMessage({ made }),
    (thrown) => parentPort!.postMessage({ thrown }),
  );
});
