/** `npm run figures -- NAME`: the figures of a run, or of all runs behind a note or comparison. Exit code 1 where they cannot be told. */
import { writer } from '../print/visible.ts';
import './plain-failures.ts';
import { keepCompiled } from '../compute/store/compile-cache.ts';
import { publicationFolder } from '../compute/store/places.ts';
import { commandLine } from './command-line.ts';

commandLine({
  name: 'figures',
  does: 'Prints all figures of runs, comparisons and attempts under the names that a text holds them by.',
  takes: [{ name: 'NAME', is: 'a run, comparison, attempts file, note or script, by its path or id', many: true }],
  options: { '--json': { does: 'print the same as JSON, unrounded and with every source of uncertainty' } },
  exits: { 0: 'the figures are printed', 1: 'they cannot be computed; the reason is printed' },
  example: 'npm run figures -- larch-fast',
});

const root = publicationFolder();
keepCompiled(root);
const { printFigures } = await import('./figures/print-figures.ts');
process.exitCode = await printFigures(root, process.argv.slice(2), {
  out: writer(process.stdout),
  err: writer(process.stderr),
  ...(process.stdout.columns ? { width: process.stdout.columns } : {}),
});
