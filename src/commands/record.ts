/** `npm run record -- COMPARISON --date 2026-04-02`: freezes a comparison into a record copy. Exit code 1 where it may not be frozen. */
import { writer } from '../print/visible.ts';
import './plain-failures.ts';
import { keepCompiled } from '../compute/store/compile-cache.ts';
import { publicationFolder } from '../compute/store/places.ts';
import { lock } from '../print/lock.ts';
import { commandLine } from './command-line.ts';

commandLine({
  name: 'record',
  does: 'Freezes a comparison under a permanent address, as it is today.',
  takes: [{ name: 'COMPARISON', is: 'the file of a comparison' }],
  options: { '--date': { value: 'DATE', does: 'the day of the copy, such as 2026-04-02; without it the day of its newest run' } },
  exits: { 0: 'the copy is written', 1: 'it may not be frozen; nothing was written' },
  example: 'npm run record -- content/comparisons/my-steps.md --date 2026-04-02',
});

const root = publicationFolder();
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
