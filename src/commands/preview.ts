/** `npm run preview`: serves dist/ on this machine, as a static host would. */
import './plain-failures.ts';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { servePreview } from '../print/serve.ts';
import { serveOptions } from './serve-options.ts';

const root = process.cwd();
const options = serveOptions();
if (!existsSync(join(root, 'dist', 'index.html'))) {
  console.error('There is no site in dist/ yet: `npm run build` makes it.');
  process.exit(1);
}
await servePreview(root, options);
