/** A worker thread of stage 1: takes tasks one at a time, stores what a later build can use again, answers. */
import { parentPort, workerData } from 'node:worker_threads';
import { keepCompiled } from './compiled.ts';
import { isPassing } from './passing.ts';
import type { PlotResult, PlotTask } from './plot-task.ts';
import type { RunResult, RunTask } from './run-step.ts';
import { openStore } from './store.ts';

export type Task = RunTask | PlotTask;
export type Answer<T extends Task> = T extends RunTask ? RunResult : PlotResult;

const { root } = workerData as { root: string };
keepCompiled(root);
const store = openStore(root);

async function perform(task: Task): Promise<RunResult | PlotResult> {
  const result = await resultOf(task);
  if (!result.problems.some(isPassing)) store.set(task.key, result);
  return result;
}

/** The steps are loaded with the first task of their kind: Vega, for one, is not loaded for a build without plots to draw. */
async function resultOf(task: Task): Promise<RunResult | PlotResult> {
  if (task.step === 'run') return (await import('./run-step.ts')).runStep(root, store, task);
  return (await import('./plot-step.ts')).plotStep(root, store, task);
}

parentPort!.on('message', (task: Task) => {
  perform(task).then(
    (answer) => parentPort!.postMessage({ answer }),
    (thrown) => parentPort!.postMessage({ thrown }),
  );
});
