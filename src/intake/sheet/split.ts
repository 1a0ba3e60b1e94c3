/** One line -> its fields, with quotes honoured and positions kept. For samples, messages and lines with damaged quotes. */

export interface Field {
  readonly text: string;
  /** 0-based, half open, blanks around it left out. */
  readonly from: number;
  readonly to: number;
  readonly quoted: boolean;
}

export interface SplitLine {
  readonly cells: readonly Field[];
  /** 0-based offset of a quote that is not closed, or closed in the middle of a field; -1 when there is none. */
  readonly badQuote: number;
}

/** Delimiter of text that is aligned with runs of blanks. */
export const BLANKS = ' ';

/** Splits one line. Blanks around a field are not part of it (RFC 4180 says they are; loggers say they are not). */
export function splitLine(line: string, delimiter: string): SplitLine {
  if (delimiter === BLANKS) return { cells: splitBlanks(line), badQuote: -1 };
  const cells: Field[] = [];
  let badQuote = -1;
  let at = 0;
  for (;;) {
    const start = skipBlanks(line, at, delimiter);
    const field = line[start] === '"' ? quotedField(line, start, delimiter) : plainField(line, start, delimiter);
    cells.push(field.cell);
    if (badQuote < 0) badQuote = field.badQuote;
    if (field.next < 0) return { cells, badQuote };
    at = field.next;
  }
}

interface Step {
  readonly cell: Field;
  /** Where the next field starts; -1 after the last. */
  readonly next: number;
  readonly badQuote: number;
}

function plainField(line: string, start: number, delimiter: string): Step {
  const stop = line.indexOf(delimiter, start);
  const end = stop < 0 ? line.length : stop;
  const text = line.slice(start, end).trimEnd();
  return { cell: { text, from: start, to: start + text.length, quoted: false }, next: stop < 0 ? -1 : stop + 1, badQuote: -1 };
}

function quotedField(line: string, start: number, delimiter: string): Step {
  let close = line.indexOf('"', start + 1);
  while (close >= 0 && line[close + 1] === '"') close = line.indexOf('"', close + 2);
  if (close < 0) return { ...plainField(line, start, delimiter), badQuote: start };
  const after = skipBlanks(line, close + 1, delimiter);
  if (after < line.length && line[after] !== delimiter) return { ...plainField(line, start, delimiter), badQuote: close };
  const text = line
    .slice(start + 1, close)
    .replaceAll('""', '"')
    .trim();
  return { cell: { text, from: start, to: close + 1, quoted: true }, next: after < line.length ? after + 1 : -1, badQuote: -1 };
}

function skipBlanks(line: string, at: number, delimiter: string): number {
  let i = at;
  while (i < line.length && line[i] !== delimiter && (line[i] === ' ' || line[i] === '\t')) i++;
  return i;
}

function splitBlanks(line: string): Field[] {
  return [...line.matchAll(/\S+/g)].map((m) => ({ text: m[0], from: m.index, to: m.index + m[0].length, quoted: false }));
}
