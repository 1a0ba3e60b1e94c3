/** `npm run dev`: the site with drafts and held-back notes, refreshed as files are saved. `npm run dev -- --port 5000` picks a port. */
import './plain-failures.ts';
import { publicationFolder } from '../compute/store/places.ts';
import { lock } from '../print/lock.ts';
import { serveDev } from '../print/serve.ts';
import { undoSwap } from '../print/swap.ts';
import { commandLine } from './command-line.ts';
import { SERVE_OPTIONS, serveOptions } from './serve-options.ts';

commandLine({
  name: 'dev',
  does: 'Serves the site with drafts and held-back notes, and refreshes the open page when a file is saved.',
  options: SERVE_OPTIONS,
  exits: { 0: 'it was stopped', 1: 'it could not start, or another dev server of the project is running' },
  example: 'npm run dev -- --port 5000',
});

const root = publicationFolder();
const options = serveOptions();
if ((await lock(root, 'dev')) === undefined) {
  console.error('Another dev server of this project is running. Stop it first.');
  process.exit(1);
}
const held = await lock(root);
if (held !== undefined) {
  undoSwap(root);
  held.close();
}
await serveDev(root, options);
