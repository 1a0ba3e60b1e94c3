/** `npm run check`: stage 1 alone. Prints every problem; exit code 1 where one is an error. */
import { parseArgs } from 'node:util';
import './plain-failures.ts';
import { keepCompiled } from '../compute/store/compile-cache.ts';
import { publicationFolder, toolVersion } from '../compute/store/places.ts';
import { lock } from '../print/lock.ts';
import { undoSwap } from '../print/swap.ts';
import { writer } from '../print/visible.ts';
import { commandLine, notUnderstood } from './command-line.ts';
import { pictureProgress } from './picture-progress.ts';

commandLine({
  name: 'check',
  does: 'Computes all figures and prints every problem with its place, without building the site.',
  options: {
    '--json': { does: 'print the problems as JSON' },
    '--sarif': { does: 'print them as SARIF 2.1.0, which code hosts show beside the line' },
  },
  exits: { 0: 'no errors; there may be warnings', 1: 'an error was found' },
  example: 'npm run check',
});

const { values } = parseArgs({ options: { json: { type: 'boolean' }, sarif: { type: 'boolean' } } });
if (values.json && values.sarif)
  process.exit(
    notUnderstood(
      { err: writer(process.stderr) },
      '--json and --sarif exclude each other: one form is printed.',
      'npm run check -- --sarif',
    ),
  );
const root = publicationFolder();
if ((await lock(root)) === undefined) {
  const why = 'Another build or check of this project is under way. Wait for it, or stop it, then check again.';
  console.error(why);
  const { notCheckedJson, notCheckedSarif } = await import('./check/formats.ts');
  if (values.json || values.sarif) printJson(values.json ? notCheckedJson(why) : notCheckedSarif(why, toolVersion()));
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
if (values.json || values.sarif) {
  const { problemsJson, problemsSarif } = await import('./check/formats.ts');
  printJson(values.json ? problemsJson(problems) : problemsSarif(problems, toolVersion()));
} else {
  process.stderr.write(report(root, problems));
  if (problems.length === 0) console.log('No problems found.');
}
process.exitCode = hasErrors(problems) ? 1 : 0;

function printJson(told: object): void {
  process.stdout.write(`${JSON.stringify(told, null, 2)}\n`);
}
