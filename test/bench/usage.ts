/** Loaded before a measured command: writes what its process has used, worker threads included, to the file that the environment names. */
import { writeFileSync } from 'node:fs';
import { isMainThread } from 'node:worker_threads';

if (isMainThread) process.once('exit', () => writeFileSync(process.env.BENCH_USAGE!, JSON.stringify(process.resourceUsage())));
