/** A worker thread of stage 1: takes tasks one at a time, stores what a later build can use again, answers. */
import { parentPort, workerData } from 'node:worker_threads';
import { type PlotResult, type PlotTask, plotStep } from './plot-step.ts';
import { type RunResult, type RunTask, runStep } from './run-step.ts';
import { openStore } from './store.ts';

export type Task = RunTask | PlotTask;
export type Answer<T extends Task> = T extends RunTask ? RunResult : PlotResult;

const { root } = workerData as { root: string };
const store = openStore(root);

async function perform(task: Task): Promise<RunResult | PlotResult> {
  const result = task.step === 'run' ? runStep(root, store, task) : await plotStep(root, store, task);
  store.set(task.key, result);
  return result;
}

parentPort!.on('message', (task: Task) => {
  perform(task).then(
    (answer) => parentPort!.postMessage({ answer }),
    (thrown) => parentPort!.postMessage({ thrown }),
  );
});
