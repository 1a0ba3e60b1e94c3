/** Which records are rows: everything else between header and footer is set aside with its reason, or is blank, or repeats the header. */
import { type Problem, warning } from '../../problem.ts';
import { cellKind, isTyped } from '../cells/cells.ts';
import type { Inference } from '../log.ts';
import { type Drops, NO_DROPS } from '../report/repairs.ts';
import type { Reporter } from '../report/report.ts';
import { LAST_CELL_CUT, mayBeCut } from '../sheet/last-line.ts';
import { placeOfLine } from '../sheet/lines.ts';
import type { Sheet } from '../sheet/open.ts';
import { isBlankRecord } from '../sheet/structure.ts';
import { fieldsLead } from './leading.ts';
import { headerChanged, isOtherHeader } from './other-header.ts';

export interface Rows {
  /** Indices of records with the right number of fields. */
  readonly records: Int32Array;
  readonly blank: number;
  readonly repeatedHeaders: number;
  /** Lines of text between the header and the first row. */
  readonly marks: number;
  readonly problems: readonly Problem[];
  readonly inferences: readonly Inference[];
}

/**
 * Sorts the records between header and footer that no declared drop takes. Nothing is padded or shifted.
 * @param lastIsWhole - the author says that the last line is whole although no line end follows it.
 */
export function findRows(sheet: Sheet, reporter: Reporter, drops: Drops = NO_DROPS, lastIsWhole = false): Rows {
  const { structure, records } = sheet;
  const { damaged } = records;
  const found = new Int32Array(Math.max(structure.end - structure.first, 0));
  let count = 0;
  let blank = 0;
  let repeatedHeaders = 0;
  let marks = 0;
  const odd: number[] = [];
  let other = -1;
  const begins = beginsTyped(sheet);
  for (let record = structure.first; record < structure.end; record++) {
    if (drops.takes(record)) continue;
    const fields = records.width(record);
    if (damaged.size > 0 && damaged.has(record)) reporter.row(record, 'line-damaged', damaged.get(record)!);
    else if (fields === structure.width || fitsButForDelimiter(record, sheet)) {
      const names = !begins(record);
      if (names && isHeaderAgain(record, sheet)) repeatedHeaders++;
      else if (names && other < 0 && record > structure.firstRow && isOtherHeader(record, sheet)) other = record;
      else if (lastIsWhole || !isLast(record, sheet)) found[count++] = record;
      else if (isCutOff(record, sheet)) reporter.row(record, 'last-line-cut', 'the last line ends at NUL bytes and may be cut off');
      else if (mayBeCut(record, found.subarray(0, count), sheet)) reporter.row(record, 'last-cell-cut', LAST_CELL_CUT);
      else found[count++] = record;
    } else if (isBlankRecord(records.row(record))) blank++;
    else if (record < structure.firstRow && holdsText(records.row(record), sheet)) marks++;
    else odd.push(record);
  }
  const kept = found.subarray(0, count);
  const longer = lastWidth(sheet, kept);
  const leading = longer !== null && fieldsLead(sheet, kept, longer) ? new Set(longer) : null;
  for (const record of odd) if (!leading?.has(record)) reporter.row(record, ...wrongWidth(record, records.width(record), sheet));
  return {
    records: leading ? Int32Array.from([...kept, ...leading]) : kept,
    blank,
    repeatedHeaders,
    marks,
    problems: [
      ...(other < 0 ? [] : [headerChanged(sheet, other)]),
      ...(longer === null ? [] : [changedForGood(sheet, longer, leading !== null)]),
    ],
    inferences: notes(sheet, repeatedHeaders, marks),
  };
}

/** Whether a record begins with a number or a time, and so holds no names, unless the header begins so too: nearly every row, told without its text. */
function beginsTyped({ records, structure, dialect }: Sheet): (record: number) => boolean {
  const header = [structure.header, structure.units].some((names) => isTyped(names?.[0] ?? '', dialect.decimal));
  const [one, number, stamp] = [new Int32Array(1), new Float64Array(1), new Float64Array(3)];
  return (record) => {
    if (header || !isDigit(records.letter(record))) return false;
    if (records.stamp(record, 0, stamp)) return true;
    one[0] = record;
    records.numbers(one, 0, dialect.decimal, 0, number);
    return !Number.isNaN(number[0]) || isTyped(records.cell(record, 0).trim(), dialect.decimal);
  };
}

function isDigit(letter: number): boolean {
  return letter >= 48 && letter <= 57;
}

/** No number and no time: a line such as `# recording starts`. */
function holdsText(record: readonly string[], { dialect }: Sheet): boolean {
  return record.every((cell) => ['text', 'missing'].includes(cellKind(cell, dialect.decimal)));
}

/** A delimiter after the last field, or none where the header has one. */
function fitsButForDelimiter(record: number, { records, structure }: Sheet): boolean {
  const { width, header, kinds } = structure;
  const fields = records.width(record);
  if (fields === width + 1) return records.cell(record, width).trim() === '';
  return fields === width - 1 && fields > 0 && header?.[width - 1] === '' && kinds[width - 1] === 'missing';
}

/** Whether a record repeats the header, or the line of units. */
export function isHeaderAgain(record: number, { records, structure }: Sheet): boolean {
  const first = records.cell(record, 0).trim();
  const same = (names: readonly string[] | null) => {
    if (names === null || names[0] !== first) return false;
    const row = records.row(record);
    return names.every((name, k) => name === (row[k] ?? '').trim());
  };
  return same(structure.header) || same(structure.units);
}

function isLast(record: number, sheet: Sheet): boolean {
  return record === sheet.records.count - 1;
}

function isCutOff(record: number, sheet: Sheet): boolean {
  return sheet.decoded.nulTail > 0 && sheet.openEnd && isLast(record, sheet);
}

function wrongWidth(record: number, fields: number, sheet: Sheet): [string, string] {
  if (sheet.openEnd && isLast(record, sheet))
    return ['last-line-cut', `the last line is cut off after ${fields} of ${sheet.structure.width} fields`];
  return ['field-count', `${fields} ${fields === 1 ? 'field' : 'fields'} where the other rows have ${sheet.structure.width}`];
}

/** Rows at the end that all have another field count than those before, or null. A sensor was added or dropped. */
function lastWidth({ structure, records }: Sheet, kept: Int32Array): readonly number[] | null {
  const last = kept.at(-1);
  if (last === undefined) return null;
  const after: number[] = [];
  for (let record = last + 1; record < structure.end; record++) if (!isBlankRecord(records.row(record))) after.push(record);
  const width = after.length > 0 ? records.width(after[0]!) : 0;
  if (after.length < 3 || width === structure.width || after.some((record) => records.width(record) !== width)) return null;
  return after;
}

function changedForGood(sheet: Sheet, rows: readonly number[], leading: boolean): Problem {
  const { structure, records } = sheet;
  const width = records.width(rows[0]!);
  const place = placeOfLine(sheet.file, sheet.lines, records.lines[rows[0]!]!);
  const found = `from here to the end the rows have ${width} ${width === 1 ? 'field' : 'fields'} instead of ${structure.width}, without a new header`;
  return leading
    ? warning(
        'field-count-changed',
        place,
        `${found}; the first ${structure.width} of these ${rows.length} rows go on as before and are read, what follows them is not`,
        { remedy: 'see whether a column was added at the end while logging; if not, drop these lines under `repairs`' },
      )
    : warning('field-count-changed', place, `${found}; these ${rows.length} rows are set aside`, {
        remedy: 'a column was added or dropped while logging: keep a copy of each part as a log of its own',
      });
}

function filledRows({ records }: Sheet, from: number, to: number): (readonly string[])[] {
  const rows: (readonly string[])[] = [];
  for (let record = from; record < to; record++) if (!isBlankRecord(records.row(record))) rows.push(records.row(record));
  return rows;
}

function notes(sheet: Sheet, repeatedHeaders: number, marks: number): Inference[] {
  const { structure, records, decoded } = sheet;
  const lineOf = (record: number) => records.lines[record]!;
  const found: Inference[] = [];
  if (structure.header === null)
    found.push({ method: 'no-header', statement: 'The file has no header: columns are numbered from the left.' });
  else if (structure.headerAt > structure.firstRow)
    found.push({
      method: 'header-below',
      statement: `The header stands on line ${lineOf(structure.headerAt)}, below rows of the same form; its names are taken for all rows.`,
    });
  else if (structure.headerAt > 0)
    found.push({
      method: 'header-line',
      statement: `The header stands on line ${lineOf(structure.headerAt)}; what is above it is not read.`,
    });
  if (structure.unitsAt >= 0) found.push({ method: 'units-line', statement: `Line ${lineOf(structure.unitsAt)} gives units.` });
  const again = structure.headerAt > structure.firstRow ? repeatedHeaders - 1 : repeatedHeaders;
  if (again > 0)
    found.push({
      method: 'repeated-header',
      statement: `The header is repeated ${again === 1 ? 'once' : `${again} times`} among the rows.`,
    });
  if (marks > 0)
    found.push({
      method: 'marker-lines',
      statement: `${marks === 1 ? 'A line' : `${marks} lines`} of text between the header and the first row ${marks === 1 ? 'is' : 'are'} not read.`,
    });
  const footer = filledRows(sheet, structure.end, records.count).length;
  if (footer > 0)
    found.push({
      method: 'footer',
      statement: `${footer === 1 ? 'A line' : `${footer} lines`} of text after the last row ${footer === 1 ? 'is' : 'are'} not read.`,
    });
  if (!decoded.encoding.startsWith('UTF-8 (') && decoded.encoding !== 'ASCII')
    found.push({ method: 'encoding', statement: `The file is read as ${decoded.encoding}.` });
  if (sheet.dialect.decimal === ',') found.push({ method: 'decimal-mark', statement: 'Numbers are read with a decimal comma.' });
  return found;
}
