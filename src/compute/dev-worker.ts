/** Stage 1 whole in a thread of its own, for dev: each run loads the code of stage 1 as it now is. */
import { parentPort, workerData } from 'node:worker_threads';
import { keepCompiled } from './store/compile-cache.ts';

const { root } = workerData as { root: string };
keepCompiled(root);
const { compute } = await import('./compute.ts');
const { problems } = await compute(root, 'all');
parentPort!.postMessage(problems);
