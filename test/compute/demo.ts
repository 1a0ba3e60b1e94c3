/** The demonstration, computed in this process by stage 1's own steps; its cache is a folder that goes when the test ends. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll } from 'vitest';
import { dataFiles, readProject } from '../../src/compute/project/read-project.ts';
import { type ComparisonOutcome, computeComparisons } from '../../src/compute/steps/comparisons.ts';
import { runStep } from '../../src/compute/steps/runs/run-step.ts';
import { computeRuns, type Runs } from '../../src/compute/steps/runs/runs.ts';
import { type SeriesResult, seriesStep, seriesTask } from '../../src/compute/steps/series/series-step.ts';
import { openStore, type Store } from '../../src/compute/store/store.ts';
import { readRegister } from '../../src/register/read.ts';
import type { Register } from '../../src/register/register.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

export interface Demo {
  readonly register: Register;
  readonly runs: Runs;
  readonly comparisons: ReadonlyMap<string, ComparisonOutcome>;
  readonly series: ReadonlyMap<string, SeriesResult>;
  readonly store: Store;
}

/** All runs and comparisons of the demonstration, held-back ones too. */
export async function computeDemo(): Promise<Demo> {
  const folder = mkdtempSync(join(tmpdir(), 'soakproof-demo-'));
  afterAll(() => rmSync(folder, { recursive: true }));
  const store = openStore(folder);
  const { register } = readRegister(readProject(ROOT).content, dataFiles(ROOT));
  const pool = { run: async (task: Parameters<typeof runStep>[2]) => runStep(ROOT, store, task) };
  const runs = await computeRuns({ root: ROOT, store, pool: pool as never, code: 'test', register });
  const series = [...runs.outcomes].map(([id, { task }]) => [id, seriesStep(ROOT, store, seriesTask('test', task))] as const);
  return {
    register,
    runs,
    comparisons: computeComparisons({ store, code: 'test', register, runs }),
    series: new Map(series),
    store,
  };
}
