/** The ledger as other programs read it (design section 7). */
import type { Written } from '../words/written.ts';

/** Every number of a note in reading order, highlights last. */
export function publishLedger(written: Written): object {
  const entries = written.entries.map(({ file, line, column, kind, text, expression, value, unit, u, shown, verdict }) => {
    return { file, line, column, kind, text, expression, value, unit, u, shown, verdict };
  });
  return { format: 1, entries };
}

/** JSON as it is published: two blanks of indentation and a final newline. */
export function jsonText(value: object): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}
