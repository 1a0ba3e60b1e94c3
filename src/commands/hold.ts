/** `npm run hold -- NOTE`: offers for each number of a note that nothing holds what fits it, and writes the one chosen. */
import { withStyles, writer } from '../print/visible.ts';
import './plain-failures.ts';
import { keepCompiled } from '../compute/store/compile-cache.ts';
import { openKeys } from './hold/key-presses.ts';

const root = process.cwd();
keepCompiled(root);
const { holdNote } = await import('./hold/hold-note.ts');

let keys: ReturnType<typeof openKeys> | undefined;
process.exitCode = await holdNote(root, process.argv.slice(2), {
  // Bold is ours, and all else that acts on a terminal is not.
  out: (text) => process.stdout.write(withStyles(text)),
  err: writer(process.stderr),
  bold: process.stdout.isTTY === true && process.env.NO_COLOR === undefined,
  key: () => {
    keys ??= openKeys(process.stdin);
    return keys.next();
  },
});
keys?.close();
