/** `npm run check`: stage 1 alone. Prints every problem; exit code 1 where one is an error. */
import './plain-failures.ts';
import { keepCompiled } from '../compute/store/compile-cache.ts';
import { publicationFolder } from '../compute/store/places.ts';
import { lock } from '../print/lock.ts';
import { undoSwap } from '../print/swap.ts';
import { commandLine } from './command-line.ts';
import { pictureProgress } from './picture-progress.ts';

commandLine({
  name: 'check',
  does: 'Computes all figures and prints every problem with its place, without building the site.',
  exits: { 0: 'no errors; there may be warnings', 1: 'an error was found' },
  example: 'npm run check',
});

const root = publicationFolder();
if ((await lock(root)) === undefined) {
  console.error('Another build or check of this project is under way. Wait for it, or stop it, then check again.');
  process.exit(1);
}
undoSwap(root);
keepCompiled(root);
const [{ compute }, { writeLastGood: rememberGood }, { hasErrors, report }] = await Promise.all([
  import('../compute/compute.ts'),
  import('../compute/published-state/last-good.ts'),
  import('../print/report.ts'),
]);
const manifest = await compute(root, 'site', pictureProgress(process.stderr));
const { problems } = manifest;
rememberGood(root, manifest);
process.stderr.write(report(root, problems));
if (problems.length === 0) console.log('Nothing to mend.');
process.exit(hasErrors(problems) ? 1 : 0);
