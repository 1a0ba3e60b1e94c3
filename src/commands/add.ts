/** `npm run add -- FILE…`: looks at logs and tables below data/, puts them into runs and writes these. Exit code 1 where one could not be added. */
import { readSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { writer } from '../print/visible.ts';
import './plain-failures.ts';
import { publicationFolder } from '../compute/store/places.ts';
import { isDate } from '../register/values/values.ts';
import { addFiles } from './add/add-files.ts';
import type { AddOptions } from './add/options.ts';
import { commandLine } from './command-line.ts';

commandLine({
  name: 'add',
  does: 'Looks at logs and tables below data/, prints what it found in them, proposes which belong to one run, and writes the files of the runs. Where there are none yet, it writes the device and a setup too. Data is never changed.',
  takes: [{ name: 'FILE', is: 'a log, or a table of scores, surface readings or attempts, below data/', many: true }],
  options: {
    '--apart': { does: 'make each log a run of its own' },
    '--together': { does: 'make one run of all logs and tables' },
    '--date': { value: 'DATE', does: 'the day of the test, such as 2026-03-14, where the logs state none' },
  },
  exits: { 0: 'every file belongs to a run now', 1: 'a file could not be added' },
  example: 'npm run add -- data/my-device/*.csv',
});

const { values, positionals } = parseArgs({
  options: { apart: { type: 'boolean' }, together: { type: 'boolean' }, date: { type: 'string' } },
  allowPositionals: true,
});
const out = writer(process.stdout);
const err = writer(process.stderr);
if (values.date !== undefined && !isDate(values.date)) {
  err(`--date ${values.date}: there is no such day; write it as 2026-04-02\n`);
  process.exit(2);
}

const ready: string[] = [];
const isAnswered = process.stdin.isTTY && process.stdout.isTTY;
process.exitCode = addFiles(
  publicationFolder(),
  positionals,
  { out, err },
  {
    choice: values.together ? 'together' : values.apart ? 'apart' : 'proposed',
    ...(values.date === undefined ? {} : { date: values.date }),
    ...(isAnswered && !values.together && !values.apart ? { ask: answer } : {}),
    ready: (run) => ready.push(run),
  },
);
if (ready.length > 0) {
  const { printFigures } = await import('./figures/print-figures.ts');
  out('\n');
  await printFigures(publicationFolder(), ready, {
    out,
    err,
    ...(process.stdout.columns ? { width: process.stdout.columns } : {}),
  });
}

/** Waits for a line from the terminal. */
function answer(question: string): ReturnType<NonNullable<AddOptions['ask']>> {
  out(question);
  const bytes = Buffer.alloc(100);
  const said = bytes.toString('utf8', 0, readSync(0, bytes)).trim().toLowerCase();
  return said.startsWith('q') ? null : said.startsWith('a') ? 'apart' : said.startsWith('t') ? 'together' : 'proposed';
}
