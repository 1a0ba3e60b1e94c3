/** `npm run changes`: what stands against the published state, the last good check, or an earlier revision. Exit code 1 where that cannot be told. */
import { keepCompiled } from '../compute/compiled.ts';

const root = process.cwd();
keepCompiled(root);
const { changes } = await import('./changes/changes.ts');
process.exitCode = await changes(root, process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
});
