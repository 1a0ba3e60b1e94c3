/** Makes the tables of families with worker threads, a cell at a time: the same tables on any number of cores. */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { FamilyRow, FamilyTable } from '../../src/figures/checks/families.ts';
import { familyOf } from './find-families.ts';

/** What a thread is given: the place of the cell in its family. */
export interface CellTask {
  readonly family: string;
  readonly cell: number;
  readonly trials: number;
}

/** Simulates the named families; `trials` in the stead of each family's own where it is given. */
export async function familyTables(names: readonly string[], trials: number | null): Promise<Record<string, FamilyTable>> {
  const families = await Promise.all(names.map(async (name) => ({ name, family: await familyOf(name) })));
  const tasks = families.flatMap(({ name, family }) =>
    family.cells.map((_, cell): CellTask => ({ family: name, cell, trials: trials ?? family.trials })),
  );
  const counted = await inThreads(tasks);
  return Object.fromEntries(
    families.map(({ name, family: { title, words, trials: own } }) => {
      const rows = counted.flatMap((each, k) => (tasks[k]!.family === name ? each : []));
      return [name, { title, words, trials: trials ?? own, rows }];
    }),
  );
}

/** Each thread takes the next task when it is done with one. */
async function inThreads(tasks: readonly CellTask[]): Promise<(readonly FamilyRow[])[]> {
  const results: (readonly FamilyRow[])[] = new Array(tasks.length);
  let next = 0;
  const work = async (): Promise<void> => {
    const worker = new Worker(new URL('./family-worker.ts', import.meta.url));
    while (next < tasks.length) {
      const index = next++;
      results[index] = await answered(worker, tasks[index]!);
    }
    await worker.terminate();
  };
  await Promise.all(Array.from({ length: Math.min(availableParallelism(), tasks.length) }, work));
  return results;
}

function answered(worker: Worker, task: CellTask): Promise<readonly FamilyRow[]> {
  return new Promise((resolve, reject) => {
    worker.removeAllListeners();
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.postMessage(task);
  });
}
