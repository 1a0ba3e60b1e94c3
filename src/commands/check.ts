/** `npm run check`: stage 1 alone. Prints every problem; exit code 1 where one is an error. */
import { keepCompiled } from '../compute/compiled.ts';
import { lock } from '../print/lock.ts';
import { finishSwap } from '../print/swap.ts';

const root = process.cwd();
keepCompiled(root);
const [{ compute }, { hasErrors, report }] = await Promise.all([import('../compute/compute.ts'), import('../print/report.ts')]);

// Where a build is under way, its side folder is not ours to clear away.
if ((await lock(root)) !== undefined) finishSwap(root);
const { problems } = await compute(root, 'site');
process.stderr.write(report(root, problems));
if (problems.length === 0) console.log('Nothing to mend.');
process.exit(hasErrors(problems) ? 1 : 0);
