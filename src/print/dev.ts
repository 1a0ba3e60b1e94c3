/** Dev: saving a note, a run, a CSV or stage 1's own code runs stage 1 again and refreshes the open page. */
import { join, sep } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { AstroIntegrationLogger } from 'astro';
import { readManifest } from '../compute/project/manifest.ts';
import { MISSING_IN_DEV } from '../compute/results.ts';
import { editedCode } from '../compute/store/code.ts';
import { codeFolder, publicationFolder } from '../compute/store/places.ts';
import { storedBytes } from '../compute/store/store.ts';
import type { Problem } from '../problem.ts';
import { failureText } from './failure.ts';
import { refuseMalformed } from './malformed.ts';
import { report } from './report.ts';

type Server = import('vite').ViteDevServer;

/** As the bundler knows it: in a package it stands beside the compiled one. */
const RESULTS_READER = join(codeFolder(), 'compute', 'read-results.ts');

const CONTENT_TYPES: Record<string, string> = {
  svg: 'image/svg+xml',
  png: 'image/png',
  jpg: 'image/jpeg',
  webp: 'image/webp',
  avif: 'image/avif',
  csv: 'text/csv; charset=utf-8',
  json: 'application/json',
};

/** Runs stage 1 once, then whenever something that it reads was saved. */
export async function developing(server: Server, logger: AstroIntegrationLogger): Promise<void> {
  const root = publicationFolder();
  const watched = [join(root, 'content'), join(root, 'data'), ...editedCode()];
  server.watcher.add(watched);
  serveFiles(server, root);
  if (server.httpServer) refuseMalformed(server.httpServer);

  const refresh = oneAtATime(async () => {
    const fault = await runStage1(root, logger);
    if (fault !== undefined) {
      server.ws.send({ type: 'error', err: { message: fault, stack: '' } });
      return;
    }
    // Astro keeps the list of paths until it hears that the reader of results has changed.
    server.watcher.emit('change', RESULTS_READER);
    server.ws.send({ type: 'full-reload', path: '*' });
  });

  server.watcher.on('all', (_event, path) => {
    if (path !== RESULTS_READER && watched.some((folder) => path === folder || path.startsWith(folder + sep))) refresh();
  });
  await runStage1(root, logger);
}

/** What stopped it, in words. */
async function runStage1(root: string, logger: AstroIntegrationLogger): Promise<string | undefined> {
  try {
    const problems = await inThread(root);
    if (problems.length === 0) logger.info('No problems found.');
    else process.stderr.write(`\n${report(root, problems)}\n`);
    return undefined;
  } catch (thrown) {
    const fault = failureText(thrown);
    logger.error(fault);
    return fault;
  }
}

function inThread(root: string): Promise<readonly Problem[]> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('../compute/dev-worker.ts', import.meta.url), { workerData: { root } });
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', () => reject(new Error('the thread of stage 1 ended without an answer')));
  });
}

/** Calls during a call are answered by one more call after it. */
function oneAtATime(task: () => Promise<void>): () => void {
  let running = false;
  let again = false;
  const start = async () => {
    running = true;
    do {
      again = false;
      await task();
    } while (again);
    running = false;
  };
  return () => {
    if (running) again = true;
    else void start();
  };
}

/** Files beside the pages come from the store, as a build would copy them. */
function serveFiles(server: Server, root: string): void {
  server.middlewares.use((request, response, next) => {
    const address = decodeURI((request.url ?? '').split('?')[0]!);
    const path = address.startsWith(server.config.base) ? address.slice(server.config.base.length) : address.slice(1);
    const manifest = readManifest(root, 'all');
    const file = manifest?.files.find((entry) => entry.path === path);
    if (file === undefined) {
      // A page that is gone shows the one for missing addresses, with the problems that took it, and comes back by itself.
      const wantsPage = (request.headers.accept ?? '').includes('text/html') && !/^@|\.[a-z0-9]+$|^(src|node_modules)\//.test(path);
      const known = manifest?.pages.some((page) => page.path === path || page.path === `${path}/`) ?? true;
      if (wantsPage && !known) request.url = `${server.config.base}${MISSING_IN_DEV}`;
      return next();
    }
    response.setHeader('Content-Type', CONTENT_TYPES[path.slice(path.lastIndexOf('.') + 1)] ?? 'application/octet-stream');
    response.end(storedBytes(root, file.blob));
  });
}
