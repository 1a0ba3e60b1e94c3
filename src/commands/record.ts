/** `npm run record -- COMPARISON --date 2026-04-02`: freezes a comparison into a record copy. Exit code 1 where it may not be frozen. */
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
const { recordComparison } = await import('./record/record-comparison.ts');
const code = await recordComparison(root, process.argv.slice(2), {
  out: writer(process.stdout),
  err: writer(process.stderr),
});
process.exit(code);
