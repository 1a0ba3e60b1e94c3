/** `npm run correct -- --reason "why"`: writes a correction for every published number that is no longer so, in notes and scripts alike. */
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
const { correctNotes } = await import('./correct/correct-notes.ts');
const code = await correctNotes(root, process.argv.slice(2), {
  out: writer(process.stdout),
  err: writer(process.stderr),
});
process.exit(code);
