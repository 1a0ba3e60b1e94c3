/** `npm run publish -- NOTE --date 2026-04-02`: sets a note's status to published and stores what it printed. Exit code 1 where it may not go out. */
import { writer } from '../print/visible.ts';
import './plain-failures.ts';
import { keepCompiled } from '../compute/store/compile-cache.ts';
import { publicationFolder } from '../compute/store/places.ts';
import { lock } from '../print/lock.ts';
import { commandLine } from './command-line.ts';

commandLine({
  name: 'publish',
  does: 'Sets the status of a note or script to published, and stores what it prints, so that a later change needs a reason.',
  takes: [{ name: 'NOTE', is: 'the file of a note or script' }],
  options: {
    '--date': { value: 'DATE', does: 'the day of publication, such as 2026-04-02; without it the date of the note' },
    '--strict': { does: 'refuse a note with a number that nothing holds; without it they are only counted' },
  },
  exits: { 0: 'the note is published', 1: 'it may not go out yet; nothing was written' },
  example: 'npm run publish -- content/notes/my-note.md --date 2026-04-02',
});

const root = publicationFolder();
if ((await lock(root)) === undefined) {
  console.error('A build or check of this project is under way. Wait for it, or stop it, then try again.');
  process.exit(1);
}
keepCompiled(root);
const { publishNote } = await import('./publish/publish-note.ts');
const code = await publishNote(root, process.argv.slice(2), {
  out: writer(process.stdout),
  err: writer(process.stderr),
});
process.exit(code);
