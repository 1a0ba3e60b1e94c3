/** Is it a log at all? Text blocks, key-value lines and matrices are refused with a reason: numbers of a wrong split are worse than none. */
import { error, type Problem } from '../../problem.ts';
import { parseNumber } from '../cells/numbers.ts';
import type { LogDeclaration } from '../log.ts';
import { placeOfLine } from '../sheet/lines.ts';
import type { Sheet } from '../sheet/open.ts';
import { packedProblem } from '../sheet/packed.ts';
import { BLANKS } from '../sheet/split.ts';
import { interleavedColumn } from './interleaved.ts';

/** A name, a colon or an equals sign, a value; a date in words with its clock is none. */
const KEY_VALUE = /^\s*[A-Za-z](?![^:=]*\d{1,2}:\d{2}:)[\w .()/-]*\s*[=:]\s*\S/;
/** A matrix has at least this many columns; logs this wide have a header. */
const MATRIX_WIDTH = 8;

/**
 * The problem that makes the file no log, or null.
 * @param chosen - whose rows the author reads: then several rows an instant are no problem.
 */
export function refuseForm(sheet: Sheet, chosen?: LogDeclaration['rows']): Problem | null {
  const { file, lines, structure } = sheet;
  const packed = packedProblem(sheet);
  if (packed) return packed;
  if (isBlank(sheet)) {
    return error('empty-file', placeOfLine(file, lines, 1), 'the file is empty', {
      expected: 'a header and rows of readings',
      remedy: 'see whether the copy from the test bench went wrong',
    });
  }
  if (isObjects(sheet)) {
    return refusal(
      sheet,
      'the file consists of objects (JSON), not of rows',
      'have a script that is kept turn each object into a row, and name what it writes',
    );
  }
  if (isKeyValue(sheet)) {
    return refusal(
      sheet,
      'the file consists of key-value lines',
      'have the logger write one row a sample, or turn the lines into one by a script that is kept',
    );
  }
  if (
    structure.width === 0 ||
    (structure.mismatch && sheet.dialect.delimiter === BLANKS && !hasSeveralRows(sheet)) ||
    (structure.header === null && structure.kinds.every((kind) => kind === 'text' || kind === 'missing'))
  ) {
    return refusal(
      sheet,
      'no line looks like a header or a row of readings',
      'a log is a table: one row a sample, the same number of fields in each',
    );
  }
  if (isMatrix(sheet)) {
    return refusal(
      sheet,
      `the file is a matrix of numbers (${structure.width} columns, no header, no time), such as a thermal picture`,
      'read the spots off it and list them as surface readings',
    );
  }
  if (structure.mismatch) return mismatch(sheet);
  const channel = chosen ? null : interleavedColumn(sheet);
  return channel === null ? null : longForm(sheet, channel);
}

function refusal(sheet: Sheet, found: string, remedy: string): Problem {
  return error('not-a-log', placeOfLine(sheet.file, sheet.lines, 1), found, {
    expected: 'a header and one row of readings a sample',
    remedy,
  });
}

/** Lines of JSON, or one object or list over many lines. */
function isObjects({ lines }: Sheet): boolean {
  return /^\s*(?:\{\s*["}]|\[\s*[{[\d"])/.test(`${lines.at(1)}\n${lines.at(2)}`);
}

function isBlank({ lines }: Sheet): boolean {
  for (let line = 1; line <= lines.count; line++) if (lines.at(line).trim() !== '') return false;
  return true;
}

function isKeyValue(sheet: Sheet): boolean {
  if (sheet.inferences.some(({ method }) => method === 'keys-in-cells')) return false;
  const head = Array.from({ length: Math.min(sheet.lines.count, 200) }, (_, k) => sheet.lines.at(k + 1));
  const filled = head.filter((line) => line.trim() !== '');
  const mostly = (some: readonly string[]) => some.filter((line) => KEY_VALUE.test(line)).length >= 0.8 * some.length;
  // Settings above a table are such lines too.
  return filled.length > 1 && mostly(filled) && mostly(filled.slice(-8));
}

/** Prose with a number in it is no table of words. */
function hasSeveralRows({ structure, records }: Sheet): boolean {
  let rows = 0;
  for (let record = structure.firstRow; record < structure.end && rows < 2; record++)
    if (records.width(record) === structure.width) rows++;
  return rows > 1;
}

function firstRows(sheet: Sheet, from: number, to: number): (readonly string[])[] {
  const rows: (readonly string[])[] = [];
  for (let record = from; record < Math.min(to, sheet.records.count); record++) rows.push(sheet.records.row(record));
  return rows;
}

function isMatrix(sheet: Sheet): boolean {
  const { structure } = sheet;
  if ((structure.header !== null && !structure.mismatch) || structure.width < MATRIX_WIDTH) return false;
  // A delimiter at the end of every line makes a last column without a cell.
  const kinds = structure.kinds.at(-1) === 'missing' ? structure.kinds.slice(0, -1) : structure.kinds;
  if (!kinds.every((kind) => kind === 'number')) return false;
  const rows = firstRows(sheet, structure.first, structure.end).filter((record) => record.length === structure.width);
  return !rises(rows.map((record) => parseNumber(record[0]!, sheet.dialect.decimal)));
}

/** Could it be a time? It never falls and does not stay the same. */
function rises(values: readonly number[]): boolean {
  return values.length > 1 && values.every((value, k) => k === 0 || value >= values[k - 1]!) && values.at(-1)! > values[0]!;
}

function mismatch(sheet: Sheet): Problem {
  const { structure, records } = sheet;
  const names = structure.header ?? [];
  const row = structure.first < records.count ? records.row(structure.first) : [];
  const line = records.lines[structure.first] ?? 1;
  return error(
    'names-and-fields-disagree',
    placeOfLine(sheet.file, sheet.lines, records.lines[structure.headerAt] ?? 1),
    `the header has ${names.length} names, but the rows have ${structure.width} fields (line ${line}: ${row.map((cell) => cell.trim()).join(' | ')})`,
    {
      expected: 'as many names as fields',
      remedy:
        'which name belongs to which field cannot be told from the file: mend the logger, or keep a corrected copy beside the original and name that',
    },
  );
}

function longForm(sheet: Sheet, channel: number): Problem {
  const { structure, records, keys, file, lines } = sheet;
  const name = keys[channel]!;
  const place = placeOfLine(file, lines, records.lines[structure.firstRow] ?? 1);
  const value = records.cell(structure.firstRow, channel).trim();
  return error('long-form', place, `rows of several devices or channels stand in this log: \`${name}\` tells which a row is of`, {
    expected: 'one row a sample, with a column for each channel; or `rows`, which says whose rows are read',
    remedy: `below \`log\`, write \`file\` and \`rows\`, and below \`rows\` for instance \`${keyOf(name)}: ${value}\`; another device or channel is another run`,
  });
}

/** A name as a key of YAML. */
function keyOf(name: string): string {
  return /^[A-Za-z_][\w ]*$/.test(name) ? name : JSON.stringify(name);
}
