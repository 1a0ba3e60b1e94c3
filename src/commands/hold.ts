/** `npm run hold -- NOTE`: offers for each number of a note that nothing holds what fits it, and writes the one chosen. */
import { withStyles, writer } from '../print/visible.ts';
import './plain-failures.ts';
import { keepCompiled } from '../compute/store/compile-cache.ts';
import { publicationFolder } from '../compute/store/places.ts';
import { commandLine } from './command-line.ts';
import { openKeys } from './hold/key-presses.ts';

commandLine({
  name: 'hold',
  does: 'Shows each number of a note that nothing holds, with what fits it, and writes what you choose into the note.',
  takes: [{ name: 'NOTE', is: 'the file of a note or script' }],
  options: {
    '--list': { does: 'print the numbers and what fits them as JSON, and change nothing' },
    '--take': {
      value: 'N=CHOICE',
      does: 'for number N: 1 holds it by the first that fits, v1 prints that value, w1 takes its words, free leaves it free',
    },
    '--undo': { does: 'take back what hold wrote last' },
  },
  exits: { 0: 'all that was asked for is done', 1: 'something was not done; the note is as it was' },
  example: 'npm run hold -- content/notes/my-note.md --take 3=1,5=free',
});

const root = publicationFolder();
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
