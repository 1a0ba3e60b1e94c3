/** Stage 1 whole in a thread of its own, for dev: each run loads the code of stage 1 as it now is. */
import { parentPort, workerData } from 'node:worker_threads';
import { compute } from './compute.ts';

const { root } = workerData as { root: string };
const { problems } = await compute(root, 'all');
parentPort!.postMessage(problems);
