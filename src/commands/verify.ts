/** `npm run verify -- FILE…`: says of each file which published file it is. Exit code 1 where one is none, 2 where one cannot be read. */
import { writer } from '../print/visible.ts';
import './plain-failures.ts';
import { keepCompiled } from '../compute/store/compile-cache.ts';
import { publicationFolder } from '../compute/store/places.ts';
import { commandLine } from './command-line.ts';

commandLine({
  name: 'verify',
  does: 'Says of each file which published file of this project it is, to the last byte.',
  takes: [{ name: 'FILE', is: 'a downloaded file', many: true }],
  exits: {
    0: 'every file is known',
    1: 'a file is none of this project',
    2: 'a file cannot be read or told, or the command line is not understood',
  },
  example: 'npm run verify -- soak.csv',
});

const root = publicationFolder();
keepCompiled(root);
const { verifyFiles } = await import('./verify/verify-files.ts');
const code = await verifyFiles(root, process.argv.slice(2), {
  // npm runs scripts in the project's folder; names are meant from where the command was given.
  folder: process.env.INIT_CWD ?? root,
  out: writer(process.stdout),
  err: writer(process.stderr),
});
process.exitCode = code;
