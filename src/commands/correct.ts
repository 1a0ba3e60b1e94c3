/** `npm run correct -- --reason "why"`: writes a correction for every published number that is no longer so, in notes and scripts alike. */
import { writer } from '../print/visible.ts';
import './plain-failures.ts';
import { keepCompiled } from '../compute/store/compile-cache.ts';
import { publicationFolder } from '../compute/store/places.ts';
import { lock } from '../print/lock.ts';
import { commandLine } from './command-line.ts';

commandLine({
  name: 'correct',
  does: 'Writes a correction for each published number that is no longer so, into all notes and scripts. Without --reason it shows them.',
  takes: [{ name: 'NOTE', is: 'the file of a note or script; without one, all of them', optional: true, many: true }],
  options: {
    '--reason': { value: 'TEXT', does: 'why the numbers changed, in one line; readers see it' },
    '--since': { value: 'DATE', does: 'since when, such as 2026-05-02; without it the day of the newest run behind each note' },
  },
  exits: {
    0: 'the corrections are written, shown, or not needed',
    1: 'something is wrong with what was asked; nothing was written',
  },
  example: 'npm run correct -- --reason "The fast setting was tested again."',
});

const root = publicationFolder();
if ((await lock(root)) === undefined) {
  console.error('A build or check of this project is under way. Wait for it, or stop it, then try again.');
  process.exit(1);
}
keepCompiled(root);
const { correctNotes } = await import('./correct/correct-notes.ts');
const code = await correctNotes(root, process.argv.slice(2), {
  out: writer(process.stdout),
  err: writer(process.stderr),
});
process.exit(code);
