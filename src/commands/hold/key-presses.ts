/** Keys of a terminal, one at a time without Enter; lines where the input is a file or a pipe. */
import { createInterface } from 'node:readline';

export interface Keys {
  readonly next: () => Promise<string | null>;
  readonly close: () => void;
}

/** Opens standard input. In a terminal it is in raw mode until closed. */
export function openKeys(input: NodeJS.ReadStream): Keys {
  return input.isTTY ? terminalKeys(input) : lineKeys(input);
}

const INTERRUPT = '\u0003';
const END = '\u0004';

function terminalKeys(input: NodeJS.ReadStream): Keys {
  input.setRawMode(true);
  input.setEncoding('utf8');
  const queue: (string | null)[] = [];
  const waiting: ((key: string | null) => void)[] = [];
  const give = (key: string | null): void => {
    const taker = waiting.shift();
    if (taker) taker(key);
    else queue.push(key);
  };
  input.on('data', (text: string | Buffer) => {
    for (const key of keysIn(String(text))) give(key);
  });
  input.on('end', () => give(null));
  return {
    next: () =>
      queue.length > 0 ? Promise.resolve(queue.shift() as string | null) : new Promise((resolve) => waiting.push(resolve)),
    close: () => {
      input.setRawMode(false);
      input.pause();
    },
  };
}

/** Keys of what a terminal sends at once; escape sequences (arrows) are none. */
function keysIn(text: string): (string | null)[] {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: a terminal's escape sequences begin with one
  const plain = text.replace(/\u001b(?:\[[0-9;]*[A-Za-z~]|O[A-Za-z])?/g, '');
  return [...plain].map((key) =>
    key === INTERRUPT ? 'cancel' : key === END ? null : key === '\r' || key === '\n' ? '' : key.toLowerCase(),
  );
}

function lineKeys(input: NodeJS.ReadStream): Keys {
  const lines = createInterface({ input, terminal: false });
  const iterator = lines[Symbol.asyncIterator]();
  return {
    next: async () => {
      const { value, done } = await iterator.next();
      return done ? null : String(value).trim().toLowerCase();
    },
    close: () => lines.close(),
  };
}
