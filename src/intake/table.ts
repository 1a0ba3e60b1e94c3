/** A plain delimited table: scores, surface readings, attempts. One header, rows of text cells with their places. */
import { hiddenIn, visible } from '../hidden-characters.ts';
import { error, type Place, type Problem } from '../problem.ts';
import { columnKeys } from './cells/names.ts';
import { parseNumber } from './cells/numbers.ts';
import { chooseTableDialect, type Dialect } from './sheet/dialect.ts';
import { LAST_CELL_CUT, looksCut } from './sheet/last-line.ts';
import { placeOfField, placeOfLine } from './sheet/lines.ts';
import { hiddenCharacter, openSheet, type Sheet } from './sheet/open.ts';
import { packedProblem } from './sheet/packed.ts';
import { isBlankRecord } from './sheet/structure.ts';

export interface Table {
  readonly file: string;
  /** Column names, distinct, blanks around them left out. */
  readonly head: readonly string[];
  /** Where a mapping renamed them: the names that the file has, '' for a column that it lacks. */
  readonly heads?: readonly string[];
  readonly rows: readonly TableRow[];
  readonly problems: readonly Problem[];
  /** Place of the header line. */
  readonly headPlace: Place;
  /** Place of a cell of a row. */
  readonly placeOf: (row: TableRow, column: number) => Place;
  /** How the file is written: its delimiter, decimal mark and encoding. */
  readonly form: Dialect & { readonly encoding: string };
  /** Number in a cell under the table's decimal mark; NaN for anything else. */
  readonly number: (cell: string) => number;
}

export interface TableRow {
  /** 1-based. */
  readonly line: number;
  /** As many as `head`, blanks around them left out. */
  readonly cells: readonly string[];
}

/** Reads a table whose first filled line is its header. Rows with another number of fields, and a last one that looks cut, are errors and left out. Never throws. */
export function readTable(bytes: Uint8Array, file: string): Table {
  const sheet = openSheet(bytes, file, chooseTableDialect);
  const { records } = sheet;
  const { lines } = records;
  const packed = packedProblem(sheet);
  const headAt = packed ? -1 : firstFilled(sheet);
  const names = headAt < 0 ? [] : withoutTrailing(records.row(headAt).map((cell) => visible(cell.trim())));
  const problems: Problem[] = [
    ...(packed ? [] : sheet.problems),
    ...(headAt < 0 ? [] : hiddenCells(sheet, headAt, records.row(headAt))),
  ];
  const headPlace = placeOfLine(file, sheet.lines, lines[headAt] ?? 1);
  if (packed) problems.push(packed);
  else if (headAt < 0) problems.push(error('empty-file', headPlace, 'the file is empty', { expected: 'a header and rows' }));
  const rows: TableRow[] = [];
  const kept: number[] = [];
  for (let record = headAt + 1; headAt >= 0 && record < records.count; record++) {
    const row = records.row(record).map((cell) => cell.trim());
    if (row.every((cell) => cell === '')) continue;
    const problem = rowProblem(sheet, record, row, names.length) ?? cutProblem(sheet, record, kept);
    if (problem) problems.push(problem);
    else {
      problems.push(...hiddenCells(sheet, record, row));
      kept.push(record);
      rows.push({ line: lines[record]!, cells: row.slice(0, names.length).map(visible) });
    }
  }
  return {
    file,
    head: columnKeys(names),
    rows,
    problems,
    headPlace,
    placeOf: (row, column) => placeOfField(file, sheet.lines, row.line, column, sheet.dialect.delimiter),
    form: { ...sheet.dialect, encoding: sheet.decoded.encoding },
    number: (cell) => parseNumber(cell, sheet.dialect.decimal),
  };
}

function firstFilled({ records }: Sheet): number {
  for (let record = 0; record < records.count; record++) if (!isBlankRecord(records.row(record))) return record;
  return -1;
}

function withoutTrailing(names: string[]): string[] {
  while (names.length > 0 && names.at(-1) === '') names.pop();
  return names;
}

function rowProblem(sheet: Sheet, record: number, row: readonly string[], width: number): Problem | null {
  const place = placeOfLine(sheet.file, sheet.lines, sheet.records.lines[record]!);
  const damage = sheet.records.damaged.get(record);
  if (damage !== undefined)
    return error('line-damaged', place, damage, { remedy: 'close the quote, or double a quote that belongs to the text' });
  if (row.length === width || (row.length > width && row.slice(width).every((cell) => cell === ''))) return null;
  return error('field-count', place, `the row has ${row.length} ${row.length === 1 ? 'field' : 'fields'}, the header ${width}`, {
    expected: 'as many fields as names',
    remedy: 'put a field that holds the delimiter in double quotes, and leave no field out',
  });
}

function hiddenCells(sheet: Sheet, record: number, row: readonly string[]): Problem[] {
  return row.flatMap((cell, field) => {
    const [found] = hiddenIn(cell);
    if (!found) return [];
    const place = placeOfField(sheet.file, sheet.lines, sheet.records.lines[record]!, field, sheet.dialect.delimiter);
    return [hiddenCharacter(place, `this cell holds a character that ${found.does} (${found.name})`, 'remove it from the table')];
  });
}

function cutProblem(sheet: Sheet, record: number, kept: readonly number[]): Problem | null {
  if (!looksCut(record, kept, sheet)) return null;
  return error('last-cell-cut', placeOfLine(sheet.file, sheet.lines, sheet.records.lines[record]!), LAST_CELL_CUT, {
    remedy: 'look at the line, complete it where it is cut, and end it with a line end',
  });
}
