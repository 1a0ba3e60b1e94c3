/** `npm run preview`: serves dist/ on this machine, as a static host would. */
import './plain-failures.ts';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { HEADERS_FILE } from '../compute/outgoing/headers.ts';
import { publicationFolder } from '../compute/store/places.ts';
import { failureText } from '../print/failure.ts';
import { servePreview } from '../print/serve.ts';
import { commandLine } from './command-line.ts';
import { SERVE_OPTIONS, serveOptions } from './serve-options.ts';

commandLine({
  name: 'preview',
  does: 'Serves dist/ on this machine, as a host would that sends the headers of dist/headers.json.',
  options: SERVE_OPTIONS,
  exits: { 0: 'it was stopped', 1: 'it could not start, or there is no site in dist/' },
  example: 'npm run preview -- --port 5000',
});

const root = publicationFolder();
const options = serveOptions();
if (!existsSync(join(root, 'dist', HEADERS_FILE))) {
  console.error('There is no site in dist/ yet: `npm run build` makes it.');
  process.exit(1);
}
try {
  console.log(
    `dist/ is served at ${await servePreview(root, options)}, with the headers of dist/${HEADERS_FILE}. Ctrl+C stops it.`,
  );
} catch (thrown) {
  console.error(`The server does not start. ${failureText(thrown)}`);
  process.exit(1);
}
