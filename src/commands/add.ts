/** `npm run add -- FILE…`: looks at logs below data/ and writes a run for each, ready to edit. Exit code 1 where one could not be added. */
import { writer } from '../print/visible.ts';
import './plain-failures.ts';
import { addFiles } from './add/add-files.ts';
import { commandLine } from './command-line.ts';

commandLine({
  name: 'add',
  does: 'Looks at logs below data/, prints what it found in them, and writes the file of a run for each. Logs are never changed.',
  takes: [{ name: 'FILE', is: 'a log below data/', many: true }],
  exits: { 0: 'every log is the log of a run now', 1: 'a log could not be added' },
  example: 'npm run add -- data/my-device/soak.csv',
});

const code = addFiles(process.cwd(), process.argv.slice(2), {
  out: writer(process.stdout),
  err: writer(process.stderr),
});
process.exitCode = code;
