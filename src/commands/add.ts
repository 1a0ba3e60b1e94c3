/** `npm run add -- FILE…`: looks at logs below data/ and writes a run for each, ready to edit. Exit code 1 where one could not be added. */
import { addFiles } from './add/add-files.ts';

const code = addFiles(process.cwd(), process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
});
process.exitCode = code;
