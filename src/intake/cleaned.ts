/** A Log as a plain table: what is left of a logger's file when its form, its units and its faults are out of the way. */
import type { Log } from './log.ts';

/** Names of the two columns that are not channels. */
export interface CleanedNames {
  /** Elapsed seconds since the first row. */
  readonly time: string;
  /** Line of the log on which the row stands. */
  readonly line: string;
}

/** `time_s` and `log_line`, each with an underscore more where a channel has its name. */
export function cleanedNames(channels: readonly { readonly name: string }[]): CleanedNames {
  const taken = new Set(channels.map(({ name }) => name));
  const free = (name: string): string => (taken.has(name) ? free(`${name}_`) : name);
  return { time: free('time_s'), line: free('log_line') };
}

/**
 * CSV by RFC 4180 in UTF-8: a header, then one row for each row that was kept, none thinned: elapsed seconds, every channel in its
 * canonical unit, the line of the log. Numbers are the shortest that read back as the same double (ECMA-262, Number::toString); a
 * missing reading is an empty field. Channels' names are snake_case, so that nothing has to be quoted.
 */
export function cleanedCsv({ rows, lines, time, channels }: Log): string {
  const names = cleanedNames(channels);
  const text = [`${[names.time, ...channels.map(({ name }) => name), names.line].join(',')}\r\n`];
  // Readings come in steps: most have been written before, and looking one up costs half of writing it.
  const columns = channels.map(({ values }) => ({ values, written: new Map<number, string>() }));
  for (let row = 0; row < rows; row++) {
    let line = numeral(time.seconds[row]!);
    for (const { values, written } of columns) line += field(values[row]!, written);
    text.push(`${line},${lines[row]}\r\n`);
  }
  return text.join('');
}

function field(value: number, written: Map<number, string>): string {
  // A map takes 0 and −0 for one key.
  if (value === 0) return `,${numeral(value)}`;
  const known = written.get(value);
  if (known !== undefined) return known;
  const text = `,${numeral(value)}`;
  written.set(value, text);
  return text;
}

function numeral(value: number): string {
  if (Number.isNaN(value)) return '';
  return Object.is(value, -0) ? '-0' : String(value);
}
