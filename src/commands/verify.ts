/** `npm run verify -- FILE…`: says of each file which published file it is. Exit code 1 where one is none, 2 where one cannot be read. */
import { writer } from '../print/visible.ts';
import './plain-failures.ts';
import { keepCompiled } from '../compute/store/compile-cache.ts';

const root = process.cwd();
keepCompiled(root);
const { verifyFiles } = await import('./verify/verify-files.ts');
const code = await verifyFiles(root, process.argv.slice(2), {
  // npm runs scripts in the project's folder; names are meant from where the command was given.
  folder: process.env.INIT_CWD ?? root,
  out: writer(process.stdout),
  err: writer(process.stderr),
});
process.exitCode = code;
