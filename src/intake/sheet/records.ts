/** Text -> records of cells, each with the line it starts on. The only place that knows Papa Parse. */
import Papa from 'papaparse';
import { type DecimalMark, decimalsOf, parseNumber } from '../cells/numbers.ts';
import { indexBytes } from './byte-index.ts';
import type { Stamp } from './byte-stamp.ts';
import { indexCells } from './cell-index.ts';
import type { Decoded } from './decode.ts';
import type { Lines } from './lines.ts';
import { BLANKS, splitLine } from './split.ts';

/** Cells by record and field. Cells are cut out of the text when asked for. */
export interface Cells {
  readonly count: number;
  /** Number of fields of a record; a blank line has one empty field. */
  readonly width: (record: number) => number;
  /** '' beyond the last field. */
  readonly cell: (record: number, field: number) => string;
  readonly row: (record: number) => readonly string[];
  /** Code of the letter that a record begins with, blanks left out; that of a line end for an empty one. */
  readonly letter: (record: number) => number;
  /** Puts the number of a column's cell in each of the records (`parseNumber`) into an array, and tells the most decimals that one has (`decimalsOf`). */
  readonly numbers: (records: ArrayLike<number>, field: number, mark: DecimalMark, shift: number, into: Float64Array) => number;
  /** Puts the date and clock time of a cell into `into`, where they can be read without cutting the cell out; false elsewhere. */
  readonly stamp: (record: number, field: number, into: Stamp) => boolean;
}

export interface Records extends Cells {
  /** 1-based line on which each record starts. */
  readonly lines: Int32Array;
  /** Records that cannot be trusted: index -> reason. */
  readonly damaged: ReadonlyMap<number, string>;
}

/**
 * Splits a text with unified line ends. Without quotes an index of delimiters and line ends is all it takes, a third of the time
 * of cutting every cell out; with quotes Papa Parse reads it; where a quote goes astray, line by line, so that it swallows one line only.
 */
export function readRecords(decoded: Pick<Decoded, 'inBytes' | 'text'>, lines: Lines, delimiter: string): Records {
  if (decoded.inBytes && delimiter !== BLANKS && !decoded.inBytes.bytes.includes(QUOTE))
    return plain(indexBytes(decoded.inBytes, lines.count, delimiter));
  const { text } = decoded;
  const records = readPlain(text, lines, delimiter) ?? readQuoted(text, lines, delimiter) ?? readByLine(lines, delimiter);
  return text.includes('\0') ? { ...records, damaged: markNul(records) } : records;
}

const QUOTE = 34;

function readPlain(text: string, lines: Lines, delimiter: string): Records | null {
  return delimiter === BLANKS || text.includes('"') ? null : plain(indexCells(text, lines.count, delimiter));
}

function plain(cells: Cells): Records {
  return { ...cells, lines: oneToOne(cells.count), damaged: new Map() };
}

function oneToOne(count: number): Int32Array {
  const lines = new Int32Array(count);
  for (let k = 0; k < count; k++) lines[k] = k + 1;
  return lines;
}

/** Cells that are there as arrays. */
function arrayCells(rows: readonly (readonly string[])[]): Cells {
  return {
    count: rows.length,
    width: (record) => rows[record]!.length,
    cell: (record, field) => rows[record]![field] ?? '',
    row: (record) => rows[record]!,
    letter: (record) => (rows[record]![0]!.trimStart() || '\n').charCodeAt(0),
    numbers: numbersOf((record, field) => rows[record]![field] ?? ''),
    stamp: () => false,
  };
}

/** Numbers of cells that are there as texts. */
export function numbersOf(cell: Cells['cell']): Cells['numbers'] {
  return (records, field, mark, shift, into) => {
    let decimals = 0;
    for (let k = 0; k < records.length; k++) {
      const text = cell(records[k]!, field);
      into[k] = parseNumber(text, mark, shift);
      if (!Number.isNaN(into[k])) decimals = Math.max(decimals, decimalsOf(text, mark));
    }
    return decimals;
  };
}

function readQuoted(text: string, lines: Lines, delimiter: string): Records | null {
  if (delimiter === BLANKS || quoteAfterBlank(text, delimiter)) return null;
  const body = text.endsWith('\n') ? text.slice(0, -1) : text;
  const parsed = Papa.parse<string[]>(body, {
    delimiter,
    newline: '\n',
    header: false,
    dynamicTyping: false,
    skipEmptyLines: false,
  });
  if (parsed.errors.length > 0) return null;
  const starts = startsOf(parsed.data);
  const last = parsed.data.length - 1;
  // Where lines do not add up, the reader and we disagree about what a line is.
  if (!starts || last < 0 || starts[last]! + lineEndsIn(parsed.data[last]!) !== lines.count) return null;
  return { ...arrayCells(parsed.data), lines: starts, damaged: new Map() };
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
function startsOf(rows: readonly (readonly string[])[]): Int32Array | null {
  const starts = new Int32Array(rows.length);
  let line = 1;
  for (let k = 0; k < rows.length; k++) {
    starts[k] = line;
    const extra = lineEndsIn(rows[k]!);
    if (extra > 0 && k > 0 && rows[k]!.length !== rows[k - 1]!.length) return null;
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
  const rows: string[][] = [];
  const damaged = new Map<number, string>();
  for (let line = 1; line <= lines.count; line++) {
    const split = splitLine(lines.at(line), delimiter);
    if (split.badQuote >= 0)
      damaged.set(rows.length, `a quote at column ${split.badQuote + 1} is not closed, or closed inside a field`);
    rows.push(split.cells.length === 0 ? [''] : split.cells.map((cell) => cell.text));
  }
  return { ...arrayCells(rows), lines: oneToOne(lines.count), damaged };
}

/** Line by line, a pair of round brackets like a pair of quotes; null where no line holds one. */
export function bracketedRecords(lines: Lines, delimiter: string): Records | null {
  const rows: string[][] = [];
  let any = false;
  for (let line = 1; line <= lines.count; line++) {
    const text = lines.at(line);
    const cells = splitLine(text, delimiter).cells.map((cell) => cell.text);
    const joined = text.includes('(') ? joinBrackets(cells, delimiter) : cells;
    any ||= joined.length < cells.length;
    rows.push(joined.length === 0 ? [''] : joined);
  }
  return any ? { ...arrayCells(rows), lines: oneToOne(lines.count), damaged: new Map() } : null;
}

/** Joins the cells between a bracket that opens and the one that closes it. */
function joinBrackets(cells: readonly string[], delimiter: string): string[] {
  const joined: string[] = [];
  let depth = 0;
  for (const cell of cells) {
    if (depth > 0) joined.push(`${joined.pop()}${delimiter} ${cell}`);
    else joined.push(cell);
    for (const letter of cell) depth += letter === '(' ? 1 : letter === ')' && depth > 0 ? -1 : 0;
  }
  return depth === 0 ? joined : [...cells];
}

function markNul(records: Records): Map<number, string> {
  const damaged = new Map(records.damaged);
  for (let record = 0; record < records.count; record++) {
    if (records.row(record).some((cell) => cell.includes('\0')))
      damaged.set(record, 'the line holds NUL bytes, as after a power cut');
  }
  return damaged;
}
