/** Text -> records of cells, each with the line it starts on. The only place that knows Papa Parse. */
import Papa from 'papaparse';
import type { Lines } from './lines.ts';
import { BLANKS, splitLine } from './split.ts';

export interface Records {
  /** One array of cells a record; a blank line is one empty cell. */
  readonly cells: readonly (readonly string[])[];
  /** 1-based line on which each record starts. */
  readonly lines: Int32Array;
  /** Records that cannot be trusted: index -> reason. */
  readonly damaged: ReadonlyMap<number, string>;
}

/** Splits a text with unified line ends. Where a quote goes astray the file is read line by line, so that it swallows one line only. */
export function readRecords(text: string, lines: Lines, delimiter: string): Records {
  const records = readQuoted(text, lines, delimiter) ?? readByLine(lines, delimiter);
  return text.includes('\0') ? { ...records, damaged: markNul(records) } : records;
}

function readQuoted(text: string, lines: Lines, delimiter: string): Records | null {
  if (delimiter === BLANKS || quoteAfterBlank(text, delimiter)) return null;
  const body = text.endsWith('\n') ? text.slice(0, -1) : text;
  if (body === '' && lines.count === 0) return { cells: [], lines: new Int32Array(0), damaged: new Map() };
  const parsed = Papa.parse<string[]>(body, {
    delimiter,
    newline: '\n',
    header: false,
    dynamicTyping: false,
    skipEmptyLines: false,
  });
  if (parsed.errors.length > 0) return null;
  const cells = parsed.data;
  const starts = body.includes('"') ? startsOf(cells) : Int32Array.from(cells, (_, k) => k + 1);
  return starts && spanned(starts, cells.length) === lines.count ? { cells, lines: starts, damaged: new Map() } : null;

  function spanned(at: Int32Array, count: number): number {
    return count === 0 ? 0 : at[count - 1]! + lineEndsIn(cells[count - 1]!);
  }
}

/** `1, "a"`: the quote stands after a blank, which RFC 4180 does not know and loggers write. */
function quoteAfterBlank(text: string, delimiter: string): boolean {
  for (let at = text.indexOf('"'); at >= 0; at = text.indexOf('"', at + 1)) {
    const before = text[at - 1];
    if ((before === ' ' || before === '\t') && before !== delimiter) return true;
  }
  return false;
}

/** Lines on which records start; null where a record over several lines has not the width of its neighbours: a stray quote. */
function startsOf(cells: readonly (readonly string[])[]): Int32Array | null {
  const starts = new Int32Array(cells.length);
  let line = 1;
  for (let k = 0; k < cells.length; k++) {
    starts[k] = line;
    const extra = lineEndsIn(cells[k]!);
    if (extra > 0 && k > 0 && cells[k]!.length !== cells[k - 1]!.length) return null;
    line += 1 + extra;
  }
  return starts;
}

function lineEndsIn(record: readonly string[]): number {
  let count = 0;
  for (const cell of record) for (let at = cell.indexOf('\n'); at >= 0; at = cell.indexOf('\n', at + 1)) count++;
  return count;
}

function readByLine(lines: Lines, delimiter: string): Records {
  const cells: string[][] = [];
  const damaged = new Map<number, string>();
  for (let line = 1; line <= lines.count; line++) {
    const split = splitLine(lines.at(line), delimiter);
    if (split.badQuote >= 0)
      damaged.set(cells.length, `a quote at column ${split.badQuote + 1} is not closed, or closed inside a field`);
    cells.push(split.cells.length === 0 ? [''] : split.cells.map((cell) => cell.text));
  }
  return { cells, lines: Int32Array.from(cells, (_, k) => k + 1), damaged };
}

function markNul(records: Records): Map<number, string> {
  const damaged = new Map(records.damaged);
  records.cells.forEach((cells, k) => {
    if (cells.some((cell) => cell.includes('\0'))) damaged.set(k, 'the line holds NUL bytes, as after a power cut');
  });
  return damaged;
}
