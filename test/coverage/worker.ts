/** A thread of the coverage table: counts over its share of the seeds. */
import { parentPort, workerData } from 'node:worker_threads';
import { tally } from './tally.ts';

const { seeds } = workerData as { readonly seeds: readonly number[] };
parentPort!.postMessage({ limits: tally(seeds, 'limits'), expanded: tally(seeds, 'k = 2') });
