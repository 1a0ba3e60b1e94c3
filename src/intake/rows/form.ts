/** Is it a log at all? Text blocks, key-value lines and matrices are refused with a reason: numbers of a wrong split are worse than none. */
import { error, type Problem } from '../../problem.ts';
import { placeOfLine } from '../sheet/lines.ts';
import type { Sheet } from '../sheet/open.ts';

const KEY_VALUE = /^\s*[A-Za-z][\w .-]*\s*[=:]\s*\S/;
/** A matrix has at least this many columns; logs this wide have a header. */
const MATRIX_WIDTH = 8;

/** The problem that makes the file no log, or null. */
export function refuseForm(sheet: Sheet): Problem | null {
  const { file, lines, structure } = sheet;
  if (lines.count === 0 || sheet.decoded.text.trim() === '') {
    return error('empty-file', placeOfLine(file, lines, 1), 'the file is empty', {
      expected: 'a header and rows of readings',
      remedy: 'see whether the copy from the test bench went wrong',
    });
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
  const channel = longFormColumn(sheet);
  if (channel !== null) return longForm(sheet, channel);
  return null;
}

function refusal(sheet: Sheet, found: string, remedy: string): Problem {
  return error('not-a-log', placeOfLine(sheet.file, sheet.lines, 1), found, {
    expected: 'a header and one row of readings a sample',
    remedy,
  });
}

function isKeyValue(sheet: Sheet): boolean {
  const head = firstRows(sheet, 0, 200);
  const filled = head.filter((record) => record.some((cell) => cell.trim() !== ''));
  const pairs = filled.filter((record) => record.filter((cell) => KEY_VALUE.test(cell)).length * 2 > record.length);
  return filled.length > 1 && pairs.length >= 0.8 * filled.length;
}

function firstRows(sheet: Sheet, from: number, to: number): (readonly string[])[] {
  const rows: (readonly string[])[] = [];
  for (let record = from; record < Math.min(to, sheet.records.count); record++) rows.push(sheet.records.row(record));
  return rows;
}

function isMatrix(sheet: Sheet): boolean {
  const { structure } = sheet;
  if (structure.header !== null || structure.width < MATRIX_WIDTH) return false;
  if (!structure.kinds.every((kind) => kind === 'number')) return false;
  const rows = firstRows(sheet, structure.first, structure.end).filter((record) => record.length === structure.width);
  return !rises(rows.map((record) => Number(record[0])));
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

/** Rows looked at for the long form, and how many distinct texts a column of channel names has at most. */
const LONG_FORM_ROWS = 200;
const MOST_CHANNELS = 20;

/** A column of texts that changes from row to row while another column, the time, stays: several rows make one instant. */
function longFormColumn({ structure, records, keys }: Sheet): number | null {
  const rows: number[] = [];
  for (let record = structure.first; record < structure.end && rows.length < LONG_FORM_ROWS; record++) {
    if (records.width(record) === structure.width) rows.push(record);
  }
  const pairs = rows.slice(1).map((record, k) => [rows[k]!, record] as const);
  const same = (field: number) => pairs.filter(([a, b]) => records.cell(a, field) === records.cell(b, field));
  const times = keys.map((_, field) => field).filter((field) => structure.kinds[field] === 'time');
  const repeated = times.map(same).find((equal) => equal.length > 2 && equal.length * 5 >= pairs.length * 2);
  if (!repeated) return null;
  const isChannel = (field: number) => {
    const texts = new Set(rows.map((record) => records.cell(record, field).trim()));
    const changes = repeated.filter(([a, b]) => records.cell(a, field) !== records.cell(b, field)).length;
    return (
      structure.kinds[field] === 'text' && texts.size > 1 && texts.size <= MOST_CHANNELS && changes * 10 >= repeated.length * 9
    );
  };
  return keys.map((_, field) => field).find(isChannel) ?? null;
}

function longForm(sheet: Sheet, channel: number): Problem {
  const name = sheet.keys[channel]!;
  const place = placeOfLine(sheet.file, sheet.lines, sheet.records.lines[sheet.structure.first] ?? 1);
  return error('long-form', place, `several rows make one instant: \`${name}\` tells which channel a row is of`, {
    expected: 'one row a sample, with a column for each channel',
    remedy: 'have the logger write a column for each channel, or make such a copy by a script that is kept',
  });
}
