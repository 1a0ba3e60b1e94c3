/** A worker thread of stage 1: takes tasks one at a time, stores what a later build can use again, answers. */
import { parentPort, workerData } from 'node:worker_threads';
import type { ComparedPlotResult, ComparedPlotTask } from './compared/plot-task.ts';
import { keepCompiled } from './compiled.ts';
import { isPassing } from './passing.ts';
import type { PlotResult, PlotTask } from './plot-task.ts';
import type { RunResult, RunTask } from './run-step.ts';
import type { SeriesResult, SeriesTask } from './series-step.ts';
import { openStore } from './store.ts';

export type Task = RunTask | SeriesTask | PlotTask | ComparedPlotTask;
type Result = RunResult | SeriesResult | PlotResult | ComparedPlotResult;
export type Answer<T extends Task> = T extends RunTask
  ? RunResult
  : T extends SeriesTask
    ? SeriesResult
    : T extends ComparedPlotTask
      ? ComparedPlotResult
      : PlotResult;

const { root } = workerData as { root: string };
keepCompiled(root);
const store = openStore(root);

async function perform(task: Task): Promise<Result> {
  const result = await resultOf(task);
  if (!result.problems.some(isPassing)) store.set(task.key, result);
  return result;
}

/** The steps are loaded with the first task of their kind: Vega, for one, is not loaded for a build without plots to draw. */
async function resultOf(task: Task): Promise<Result> {
  if (task.step === 'run') return (await import('./run-step.ts')).runStep(root, store, task);
  if (task.step === 'series') return (await import('./series-step.ts')).seriesStep(root, store, task);
  if (task.step === 'compared-plot') return (await import('./compared/plot-step.ts')).comparedPlotStep(store, task);
  return (await import('./plot-step.ts')).plotStep(root, store, task);
}

parentPort!.on('message', (task: Task) => {
  perform(task).then(
    (answer) => parentPort!.postMessage({ answer }),
    (thrown) => parentPort!.postMessage({ thrown }),
  );
});
