/** The command line of commands that take one file and a day: `npm run publish`, `npm run record`. */
import { parseArgs } from 'node:util';
import { isDate } from '../register/values/values.ts';

export interface OneDated {
  /** As typed. */
  readonly file: string;
  readonly date?: string;
}

/** Reads the arguments; a text says what is wrong with them. `noun` is what the file holds: "note". */
export function readOneDated(args: readonly string[], noun: string): OneDated | string {
  try {
    const { values, positionals } = parseArgs({ args: [...args], options: { date: { type: 'string' } }, allowPositionals: true });
    const [file, other] = positionals;
    if (file === undefined) return `which ${noun}? Name one file`;
    if (other !== undefined) return `one ${noun} at a time: ${positionals.join(', ')}`;
    const { date } = values;
    if (date === undefined) return { file };
    return isDate(date) ? { file, date } : `--date ${date}: there is no such day; write it as 2026-04-02`;
  } catch (thrown) {
    return (thrown as Error).message;
  }
}
