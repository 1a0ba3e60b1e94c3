/** Worker threads, one a core: tasks go out in order, answers come back as promises. */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { stored } from '../store/memo.ts';
import type { Attachments, Store } from '../store/store.ts';
import type { Answer, Task } from './worker.ts';

export interface Pool {
  /** What a task comes to: from the store, or made by a worker, which stores it. */
  run<T extends Task>(store: Store, task: T): Promise<Answer<T>>;
  close(): Promise<void>;
}

interface Waiting {
  readonly task: Task;
  readonly resolve: (made: never) => void;
  readonly reject: (reason: unknown) => void;
}

/** Tasks that draw: the first of them in a thread loads the chart library or what rasters. */
const DRAWING: ReadonlySet<Task['step']> = new Set(['plot', 'compared-plot', 'share']);

/**
 * Room for what is made and soon forgotten, MB. A thread that reads a long log makes such things all the time, and left to itself lets them pile up:
 * with 12 MB a log of any length is read in less than 500 MB, as fast as before (measured: 0.63 GB to 0.47 GB).
 */
const PASSING = 12;

/** So many drawings take about as long as loading the chart library: for fewer, no further thread loads it. */
const WORTH_LOADING = 12;

/** Opens a pool for a project folder. Workers start with the first tasks, so a build without work starts none. */
export function openPool(root: string, size: number = availableParallelism()): Pool {
  const queue: Waiting[] = [];
  const idle: Worker[] = [];
  const all: Worker[] = [];
  const busy = new Map<Worker, Waiting>();
  /** Threads that have drawn. */
  const drawers = new Set<Worker>();
  let closed = false;

  const start = (): Worker => {
    const worker = new Worker(new URL('./worker.ts', import.meta.url), {
      workerData: { root },
      resourceLimits: { maxYoungGenerationSizeMb: PASSING },
    });
    worker.on('message', (message: { made: never } | { thrown: unknown }) => {
      const done = busy.get(worker)!;
      busy.delete(worker);
      if ('thrown' in message) done.reject(message.thrown);
      else done.resolve(message.made);
      idle.push(worker);
      next();
    });
    worker.on('error', (reason) => {
      busy.get(worker)?.reject(reason);
      busy.delete(worker);
      all.splice(all.indexOf(worker), 1);
      drawers.delete(worker);
      next();
    });
    all.push(worker);
    return worker;
  };

  /** A thread that is free for a task; undefined where it has to wait. */
  const workerFor = ({ step }: Task): Worker | undefined => {
    const other = () => idle.pop() ?? (all.length < size ? start() : undefined);
    if (!DRAWING.has(step)) return other();
    const at = idle.findIndex((worker) => drawers.has(worker));
    if (at >= 0) return idle.splice(at, 1)[0];
    return queue.length > drawers.size * WORTH_LOADING ? other() : undefined;
  };

  const next = (): void => {
    while (queue.length > 0) {
      const worker = workerFor(queue[0]!.task);
      if (worker === undefined) return;
      const waiting = queue.shift()!;
      if (DRAWING.has(waiting.task.step)) drawers.add(worker);
      busy.set(worker, waiting);
      worker.postMessage(waiting.task);
    }
  };

  const send = <T extends Task>(task: T) =>
    new Promise<{ readonly answer: Answer<T>; readonly used: Attachments }>((resolve, reject) => {
      if (closed) throw new Error(`a task of the kind ${task.step} for a pool that is closed: nobody would answer`);
      queue.push({ task, resolve: resolve as Waiting['resolve'], reject });
      next();
    });

  return {
    run: async <T extends Task>(store: Store, task: T) => {
      const before = stored<Answer<T>>(store, task.key);
      if (before !== undefined) return before;
      const { answer, used } = await send(task);
      store.note(task.key, used);
      return answer;
    },
    close: async () => {
      closed = true;
      await Promise.all(all.map((worker) => worker.terminate()));
    },
  };
}
