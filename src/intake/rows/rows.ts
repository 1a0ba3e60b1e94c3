/** Which records are rows: everything else between header and footer is set aside with its reason, or is blank, or repeats the header. */
import { type Problem, warning } from '../../problem.ts';
import type { Inference } from '../log.ts';
import { type Drops, NO_DROPS } from '../report/repairs.ts';
import type { Reporter } from '../report/report.ts';
import { LAST_CELL_CUT, mayBeCut } from '../sheet/last-line.ts';
import { placeOfLine } from '../sheet/lines.ts';
import type { Sheet } from '../sheet/open.ts';
import { isBlankRecord } from '../sheet/structure.ts';

export interface Rows {
  /** Indices of records with the right number of fields. */
  readonly records: Int32Array;
  readonly blank: number;
  readonly repeatedHeaders: number;
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
  for (let record = structure.first; record < structure.end; record++) {
    if (drops.takes(record)) continue;
    const fields = records.width(record);
    if (damaged.size > 0 && damaged.has(record)) reporter.row(record, 'line-damaged', damaged.get(record)!);
    else if (fields === structure.width || fitsButForDelimiter(record, sheet)) {
      if (isHeaderAgain(record, sheet)) repeatedHeaders++;
      else if (lastIsWhole) found[count++] = record;
      else if (isCutOff(record, sheet)) reporter.row(record, 'last-line-cut', 'the last line ends at NUL bytes and may be cut off');
      else if (mayBeCut(record, found.subarray(0, count), sheet)) reporter.row(record, 'last-cell-cut', LAST_CELL_CUT);
      else found[count++] = record;
    } else if (isBlankRecord(records.row(record))) blank++;
    else reporter.row(record, ...wrongWidth(record, fields, sheet));
  }
  const kept = found.slice(0, count);
  return {
    records: kept,
    blank,
    repeatedHeaders,
    problems: changedForGood(sheet, kept),
    inferences: notes(sheet, repeatedHeaders),
  };
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

/** Says so when another field count stays to the end (a sensor was added) or from the start. */
function changedForGood(sheet: Sheet, kept: Int32Array): Problem[] {
  const { structure, records } = sheet;
  const last = kept.at(-1);
  if (last === undefined) return [];
  const after = filledRows(sheet, last + 1, structure.end);
  const width = after[0]?.length;
  if (after.length < 3 || width === structure.width || !after.every((row) => row.length === width)) return [];
  const place = placeOfLine(sheet.file, sheet.lines, records.lines[last + 1]!);
  return [
    warning(
      'field-count-changed',
      place,
      `from here to the end the rows have ${width} fields instead of ${structure.width}, without a new header; these ${after.length} rows are set aside`,
      {
        remedy: 'a column was added or dropped while logging: keep a copy of each part as a log of its own',
      },
    ),
  ];
}

function filledRows({ records }: Sheet, from: number, to: number): (readonly string[])[] {
  const rows: (readonly string[])[] = [];
  for (let record = from; record < to; record++) if (!isBlankRecord(records.row(record))) rows.push(records.row(record));
  return rows;
}

function notes(sheet: Sheet, repeatedHeaders: number): Inference[] {
  const { structure, records, decoded } = sheet;
  const lineOf = (record: number) => records.lines[record]!;
  const found: Inference[] = [];
  if (structure.header === null)
    found.push({ method: 'no-header', statement: 'The file has no header: columns are numbered from the left.' });
  else if (structure.headerAt > 0)
    found.push({
      method: 'header-line',
      statement: `The header stands on line ${lineOf(structure.headerAt)}; what is above it is not read.`,
    });
  if (structure.unitsAt >= 0) found.push({ method: 'units-line', statement: `Line ${lineOf(structure.unitsAt)} gives units.` });
  if (repeatedHeaders > 0)
    found.push({
      method: 'repeated-header',
      statement: `The header is repeated ${repeatedHeaders === 1 ? 'once' : `${repeatedHeaders} times`} among the rows.`,
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
