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

/** Opens a pool for a project folder. Workers start with the first tasks, so a build without work starts none. */
export function openPool(root: string, size: number = availableParallelism()): Pool {
  const queue: Waiting[] = [];
  const idle: Worker[] = [];
  const all: Worker[] = [];
  const busy = new Map<Worker, Waiting>();
  let closed = false;

  const start = (): Worker => {
    const worker = new Worker(new URL('./worker.ts', import.meta.url), { workerData: { root } });
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
      next();
    });
    all.push(worker);
    return worker;
  };

  const next = (): void => {
    while (queue.length > 0) {
      const worker = idle.pop() ?? (all.length < size ? start() : undefined);
      if (worker === undefined) return;
      const waiting = queue.shift()!;
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
