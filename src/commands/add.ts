/** `npm run add -- FILE…`: looks at logs below data/ and writes a run for each, ready to edit. Exit code 1 where one could not be added. */
import { writer } from '../print/visible.ts';
import './plain-failures.ts';
import { addFiles } from './add/add-files.ts';

const code = addFiles(process.cwd(), process.argv.slice(2), {
  out: writer(process.stdout),
  err: writer(process.stderr),
});
process.exitCode = code;
