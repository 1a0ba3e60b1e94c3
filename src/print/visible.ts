/** What goes out on a terminal: text of files is made fit for it. */
import { visible } from '../hidden-characters.ts';

/** Writes to a stream of the terminal. */
export function writer(stream: NodeJS.WritableStream): (text: string) => void {
  return (text) => {
    stream.write(visible(text));
  };
}

/** Colours and bold: all that a program's own messages ask of a terminal. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: the codes that are let through
const STYLE = /(\u001b\[[0-9;]*m)/;

/** Lets no control character but those of colours through to the terminal, whoever writes: messages of libraries name files, too. */
export function guardTerminal(): void {
  for (const stream of [process.stdout, process.stderr]) {
    const write = stream.write.bind(stream) as (chunk: string | Uint8Array, ...more: unknown[]) => boolean;
    stream.write = (chunk: string | Uint8Array, ...more: unknown[]) =>
      write(typeof chunk === 'string' ? withStyles(chunk) : chunk, ...more);
  }
}

/** A text made visible but for its colours. */
export function withStyles(text: string): string {
  return text
    .split(STYLE)
    .map((part, odd) => (odd % 2 === 1 ? part : visible(part)))
    .join('');
}
