/** The demonstration, computed in this process by stage 1's own steps, once for all tests of a worker that ask for it. */
import { mkdtempSync } from 'node:fs';
import { join } from 'node:path';
import { inject } from 'vitest';
import { dataFiles, readProject } from '../../src/compute/project/read-project.ts';
import { type ComparisonOutcome, computeComparisons } from '../../src/compute/steps/comparisons.ts';
import { runStep } from '../../src/compute/steps/runs/run-step.ts';
import { computeRuns, type Runs } from '../../src/compute/steps/runs/runs.ts';
import { type SeriesResult, seriesStep, seriesTask } from '../../src/compute/steps/series/series-step.ts';
import { openStore, type Store } from '../../src/compute/store/store.ts';
import { readRegister } from '../../src/register/read.ts';
import type { Register } from '../../src/register/register.ts';
import { DEMONSTRATION } from '../demonstration-folder.ts';

export interface Demo {
  readonly register: Register;
  readonly runs: Runs;
  readonly comparisons: ReadonlyMap<string, ComparisonOutcome>;
  readonly series: ReadonlyMap<string, SeriesResult>;
  readonly store: Store;
}

let computed: Promise<Demo> | undefined;

/** All runs and comparisons of the demonstration, held-back ones too. */
export function computeDemo(): Promise<Demo> {
  computed ??= compute();
  return computed;
}

async function compute(): Promise<Demo> {
  const store = openStore(mkdtempSync(join(inject('scratch'), 'demo-')));
  const { register } = readRegister(readProject(DEMONSTRATION).content, dataFiles(DEMONSTRATION));
  const pool = { run: async (_: Store, task: Parameters<typeof runStep>[2]) => runStep(DEMONSTRATION, store, task) };
  const runs = await computeRuns({ root: DEMONSTRATION, store, pool: pool as never, code: 'test', register });
  const series = [...runs.outcomes].map(
    ([id, { task }]) => [id, seriesStep(DEMONSTRATION, store, seriesTask('test', task))] as const,
  );
  return {
    register,
    runs,
    comparisons: computeComparisons({ store, code: 'test', register, runs }),
    series: new Map(series),
    store,
  };
}
