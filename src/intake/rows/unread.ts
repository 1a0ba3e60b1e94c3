/** What a log holds besides the readings that a run uses: host names above the header, columns that no channel reads, remarks. */
import { cellKind } from '../cells/cells.ts';
import { parseFlag } from '../cells/flags.ts';
import type { LogDeclaration, SetAside } from '../log.ts';
import type { Sheet } from '../sheet/open.ts';
import { pickColumn } from '../sheet/pick.ts';
import { isBlankRecord } from '../sheet/structure.ts';
import { isHeaderAgain } from './rows.ts';

/** Counts alone, so that a page may say them. */
export interface Unread {
  /** Columns that neither the time nor a channel reads. */
  readonly columns: number;
  /** Lines above the header or below the rows, and lines between the rows that hold text. */
  readonly lines: number;
  /** Cells of a channel that hold text instead of a reading. */
  readonly cells: number;
}

/** Columns and records that were read, and what was set aside. */
export interface Used {
  readonly timeFields: readonly number[];
  /** Records that became rows, in their order. */
  readonly kept: Int32Array;
  readonly setAside: readonly SetAside[];
}

/** Counts what no figure rests on. A line whose every cell could be a reading, such as one with a field too few, tells nobody anything. */
export function unreadOf(sheet: Sheet, { channels }: Pick<LogDeclaration, 'channels'>, used: Used): Unread {
  const fields = channels.map(({ column, place }) => pickColumn(sheet, column, place, '')).filter((at) => typeof at === 'number');
  const read = new Set([...used.timeFields, ...fields]);
  const spare = sheet.keys.map((_, field) => field).filter((field) => !read.has(field) && !isEmpty(sheet, field, used.kept));
  return {
    columns: spare.length,
    lines: unreadLines(sheet, used.kept),
    cells: used.setAside.filter(({ column }) => column !== undefined).length,
  };
}

/** A delimiter at the end of every line makes a column without a name and without a cell. */
function isEmpty({ structure, records }: Sheet, field: number, kept: Int32Array): boolean {
  if ((structure.header?.[field] ?? '') !== '' || (structure.units?.[field] ?? '') !== '') return false;
  return kept.every((record) => field >= records.width(record) || records.cell(record, field).trim() === '');
}

function unreadLines(sheet: Sheet, kept: Int32Array): number {
  const { records, structure } = sheet;
  let row = 0;
  let count = 0;
  for (let record = 0; record < records.count; record++) {
    if (record === kept[row]) {
      row++;
      continue;
    }
    if (record === structure.headerAt || record === structure.unitsAt) continue;
    const within = record >= structure.first && record < structure.end;
    if (isBlankRecord(records.row(record)) || (within && (isHeaderAgain(record, sheet) || isOnlyReadings(record, sheet)))) continue;
    count++;
  }
  return count;
}

/** Digits and what numbers and times are written with: also of a number or time that was cut off. */
const DIGITS = /^[-+\d.,:/\sTZ]*$/;
/** An address of IPv4 (RFC 791) is digits as well, and names a machine. */
const ADDRESS = /(?<!\d)\d{1,3}(?:\.\d{1,3}){3}(?!\d)/;

/** No more fields than a row has, each of them a number, a time, a flag or nothing. */
function isOnlyReadings(record: number, { records, structure, dialect }: Sheet): boolean {
  const row = records.row(record);
  return row.every((cell, field) => {
    if (field >= structure.width) return cell.trim() === '';
    if (cellKind(cell, dialect.decimal) !== 'text' || !Number.isNaN(parseFlag(cell, 10))) return true;
    return DIGITS.test(cell) && !ADDRESS.test(cell);
  });
}
