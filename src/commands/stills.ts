/** `npm run stills -- SCRIPT`: the pictures of a script's video. Exit code 1 where they cannot be drawn. */
import { writer } from '../print/visible.ts';
import './plain-failures.ts';
import { keepCompiled } from '../compute/store/compile-cache.ts';
import { publicationFolder } from '../compute/store/places.ts';
import { lock } from '../print/lock.ts';
import { commandLine } from './command-line.ts';

commandLine({
  name: 'stills',
  does: 'Draws the pictures for a script’s video into stills/: every cue, plot, table and highlight, light, dark and transparent.',
  takes: [{ name: 'SCRIPT', is: 'the file of a script' }],
  options: {
    '--look': { value: 'LOOK', does: 'only light, dark or transparent' },
    '--width': { value: 'PIXELS', does: 'only 1920 or 3840 wide; 0 for SVG alone' },
  },
  exits: {
    0: 'all pictures are in stills/; there may be warnings',
    1: 'they cannot be drawn; what stood in stills/ stands as it was',
  },
  example: 'npm run stills -- content/scripts/my-script.md --look dark --width 1920',
});

const root = publicationFolder();
if ((await lock(root)) === undefined) {
  console.error('A build or check of this project is under way. Wait for it, or stop it, then try again.');
  process.exit(1);
}
keepCompiled(root);
const { makeStills } = await import('./stills/make-stills.ts');
const code = await makeStills(root, process.argv.slice(2), {
  out: writer(process.stdout),
  err: writer(process.stderr),
});
process.exit(code);
