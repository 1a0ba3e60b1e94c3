/** `npm run publish -- NOTE --date 2026-04-02`: sets a note's status to published and stores what it printed. Exit code 1 where it may not go out. */
import { writer } from '../print/visible.ts';
import './plain-failures.ts';
import { keepCompiled } from '../compute/store/compile-cache.ts';
import { lock } from '../print/lock.ts';

const root = process.cwd();
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
