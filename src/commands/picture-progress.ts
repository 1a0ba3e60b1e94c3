/** What the terminal shows while pictures are made: a line that counts, or, where nobody looks, a line for each tenth of them. */
import type { Progress } from '../compute/chain.ts';

interface Terminal {
  readonly isTTY?: boolean;
  write(text: string): unknown;
}

/** Begins anew with each call. */
export function pictureProgress(terminal: Terminal): Progress {
  let told = -1;
  return (done, of) => {
    const text = `Making pictures: ${done} of ${of} done.`;
    if (terminal.isTTY) {
      terminal.write(`\r${text}${done + 1 === of ? '\n' : ''}`);
      return;
    }
    const tenth = Math.floor((10 * done) / of);
    if (tenth > told) terminal.write(`${text}\n`);
    told = tenth;
  };
}
