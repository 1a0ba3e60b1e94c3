/** Makes the coverage table with worker threads: the same table for the same runs and seed, on any number of cores. */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { CoverageTable } from '../../src/figures/checks/coverage.ts';
import type { Tally } from './asked.ts';
import { pairOf } from './plan.ts';
import { ASKED, joined } from './tally.ts';

interface Counts {
  readonly limits: Tally;
  readonly expanded: Tally;
}

/** Simulates `runs` runs with each kind of instrument, seeds from `seed` on, and counts. */
export async function coverageTable(runs: number, seed: number): Promise<CoverageTable> {
  const threads = availableParallelism();
  const seeds = Array.from({ length: runs }, (_, k) => seed + k);
  const shares = Array.from({ length: threads }, (_, thread) => seeds.filter((each) => pairOf(each) % threads === thread));
  const counts = await Promise.all(shares.map(counted));
  const limits = counts.map((count) => count.limits).reduce(joined);
  const expanded = counts.map((count) => count.expanded).reduce(joined);
  const figures = Object.entries(ASKED).map(([name, { kind, words }]) => [
    name,
    { kind, truth: words, limits: limits[name]!, expanded: expanded[name]! },
  ]);
  return { runs, seed, figures: Object.fromEntries(figures) };
}

function counted(seeds: readonly number[]): Promise<Counts> {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { workerData: { seeds } });
  return new Promise((resolve, reject) => {
    worker.once('message', resolve);
    worker.once('error', reject);
  });
}
