/** The command line of publish. */
import { parseArgs } from 'node:util';

export interface Options {
  readonly note: string;
  /** The day of publication; that of the note where it is not given. */
  readonly date?: string;
}

export const USAGE = `npm run publish -- content/notes/x.md                      dated as the note is
npm run publish -- content/notes/x.md --date 2026-04-02    dated by you
`;

/** Reads the arguments; a text says what is wrong with them. */
export function readOptions(args: readonly string[]): Options | string {
  try {
    const { values, positionals } = parseArgs({ args: [...args], options: { date: { type: 'string' } }, allowPositionals: true });
    const [note, other] = positionals;
    if (note === undefined) return 'which note? Name one file';
    if (other !== undefined) return `one note at a time: ${positionals.join(', ')}`;
    return values.date === undefined ? { note } : { note, date: values.date };
  } catch (thrown) {
    return (thrown as Error).message;
  }
}
