/** `npm run retest -- OLD new.csv`: a run that follows another takes its place in the notes and comparisons that say so. */
import { writer } from '../print/visible.ts';
import './plain-failures.ts';
import { publicationFolder } from '../compute/store/places.ts';
import { commandLine } from './command-line.ts';
import { retestRun } from './retest/retest-run.ts';

commandLine({
  name: 'retest',
  does: 'Writes the run of a retest, and puts it in the place of the old run where a note or comparison says `retests: follow`.',
  takes: [
    { name: 'RUN', is: 'the run that was tested again' },
    { name: 'LOG', is: 'the new log, below data/' },
  ],
  options: {
    '--date': { value: 'DATE', does: 'the day of the retest, such as 2026-05-02, where the log states none' },
    '--scores': { value: 'TABLE', does: 'its table of scores, below data/' },
    '--surface': { value: 'TABLE', does: 'its table of surface readings, below data/' },
    '--image': { value: 'IMAGE', does: 'its thermal image, below data/; of no use without --surface' },
  },
  exits: { 0: 'the run is written', 1: 'it could not be written; nothing was changed' },
  example: 'npm run retest -- larch-fast data/larch-2/fast-again.csv --date 2026-05-02',
});

process.exitCode = retestRun(publicationFolder(), process.argv.slice(2), {
  out: writer(process.stdout),
  err: writer(process.stderr),
});
