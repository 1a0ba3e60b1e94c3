/** Where in the file what stands: preamble, header, units line, rows, footer. Found by change of type between lines, not by position. */
import { readUnit } from '../../quantities/units.ts';
import { type CellKind, cellKind } from '../cells/cells.ts';
import type { DecimalMark } from '../cells/numbers.ts';
import type { Records } from './records.ts';

export interface Structure {
  /** Field count of the rows. */
  readonly width: number;
  /** Names as in the header, as many as `width` unless `mismatch`; null where the file has no header. */
  readonly header: readonly string[] | null;
  /** Record index of the header; -1 without one. */
  readonly headerAt: number;
  /** Units of a second header line, and its record index. */
  readonly units: readonly string[] | null;
  readonly unitsAt: number;
  /** Records [first, end) are rows, or what stands between rows, or between the header and the first row. */
  readonly first: number;
  /** The first record that is a row. */
  readonly firstRow: number;
  readonly end: number;
  /** What most cells of each column are. */
  readonly kinds: readonly CellKind[];
  /** The header has another number of names than every row has fields. */
  readonly mismatch: boolean;
}

/** Finds the structure. A file without any row gives `first === end`. */
export function findStructure(records: Records, decimal: DecimalMark): Structure {
  const sample = sampleRecords(records, decimal);
  const usual = rowWidth(sample, decimal);
  const headed = headedWidth(records, usual, decimal);
  const width = headed?.width ?? usual;
  const kinds = columnKinds([...sample, ...(headed?.rows ?? [])], width, decimal);
  const isRow = (record: readonly string[]) => looksLikeRow(record, width, kinds, decimal);
  const firstRow = firstWhere(records, isRow);
  if (firstRow < 0) return withoutRows(records, decimal);
  const first = firstReadings(records, firstRow, decimal);
  const above = oneNameTooMany(headerAbove(records, first, width, decimal), records, sample);
  const end = footerStart(records, firstRow, isRow, decimal);
  if (above.header === null) {
    return { width, kinds, first, firstRow, end, ...(headerBelow(records, firstRow, end, width, decimal) ?? above) };
  }
  return { width, kinds, first: Math.max(above.headerAt, above.unitsAt) + 1, firstRow, end, ...above };
}

/** Rows looked at below a header. */
const ROWS_BELOW = 20;

/**
 * The width of a header, where rows of its width stand right below it and most rows have another: a column was added soon after the start.
 * A header is the first line of names, all texts, that the first row of readings follows.
 */
function headedWidth(
  records: Records,
  usual: number,
  decimal: DecimalMark,
): { readonly width: number; readonly rows: (readonly string[])[] } | null {
  let header = -1;
  for (let k = 0; k < records.count; k++) {
    const record = records.row(k);
    if (isMarker(record)) continue;
    if (!isMostlyTyped(record, decimal)) {
      header = record.length > 1 && record.every((cell) => cellKind(cell, decimal) === 'text') ? k : -1;
      continue;
    }
    const width = record.length;
    if (header < 0 || width < 2 || width >= usual || records.width(header) !== width) return null;
    const rows: (readonly string[])[] = [];
    for (let row = k; row < records.count && rows.length < ROWS_BELOW && records.width(row) === width; row++)
      rows.push(records.row(row));
    return rows.length > 1 ? { width, rows } : null;
  }
  return null;
}

/** Lines that mark something and hold no field of a table: one word, or a rule of dashes. */
function isMarker(record: readonly string[]): boolean {
  return record.length === 1 || record.every((cell) => /^[\s\-=_*#+]*$/.test(cell));
}

function isMostlyTyped(record: readonly string[], decimal: DecimalMark): boolean {
  const kinds = record.map((cell) => cellKind(cell, decimal)).filter((kind) => kind !== 'missing');
  return kinds.filter(isTyped).length * 2 > kinds.length;
}

/** From where on lines hold readings, whatever their width: the first lines of a log may be torn, and the header stands above them. */
function firstReadings(records: Records, firstRow: number, decimal: DecimalMark): number {
  let first = firstRow;
  for (let k = firstRow - 1; k >= 0; k--) {
    const record = records.row(k);
    if (isBlankRecord(record)) continue;
    if (record.length < 2 || !isMostlyTyped(record, decimal)) break;
    first = k;
  }
  return first;
}

/** A header among the rows: what is above it is of an earlier recording. */
function headerBelow(records: Records, firstRow: number, end: number, width: number, decimal: DecimalMark): Above | null {
  for (let k = firstRow + 1; k < end; k++) {
    const names = records.width(k) === width || records.width(k) === width + 1 ? fitted(records.row(k), width) : null;
    if (names?.every((name) => cellKind(name, decimal) === 'text')) return { ...NO_HEADER, header: names, headerAt: k };
  }
  return null;
}

/** True for a line without anything on it. */
export function isBlankRecord(record: readonly string[]): boolean {
  return record.length === 1 && record[0]!.trim() === '';
}

function firstWhere(records: Records, holds: (record: readonly string[]) => boolean): number {
  for (let k = 0; k < records.count; k++) if (holds(records.row(k))) return k;
  return -1;
}

/** Up to 240 records, evenly spread, that hold at least one number or time. */
function sampleRecords(records: Records, decimal: DecimalMark): (readonly string[])[] {
  const sample: (readonly string[])[] = [];
  const step = Math.max(1, Math.floor(records.count / 240));
  for (let k = 0; k < records.count && sample.length < 240; k += step) {
    const record = records.row(k);
    if (record.some((cell) => isTyped(cellKind(cell, decimal)))) sample.push(record);
  }
  return sample;
}

function isTyped(kind: CellKind): boolean {
  return kind === 'number' || kind === 'time';
}

/**
 * The most frequent field count of the sample; the wider of equals. Records that are mostly numbers and times count first: settings
 * above the header can be more than the rows. A file whose count changes for good keeps the count it had most of the time.
 */
function rowWidth(sample: readonly (readonly string[])[], decimal: DecimalMark): number {
  const mostlyTyped = sample.filter((record) => isMostlyTyped(record, decimal));
  const counts = new Map<number, number>();
  for (const record of mostlyTyped.length > 0 ? mostlyTyped : sample)
    counts.set(record.length, (counts.get(record.length) ?? 0) + 1);
  let width = 0;
  let most = 0;
  for (const [candidate, count] of counts) {
    if (count > most || (count === most && candidate > width)) [width, most] = [candidate, count];
  }
  return width;
}

function columnKinds(sample: readonly (readonly string[])[], width: number, decimal: DecimalMark): CellKind[] {
  const rows = sample.filter((record) => record.length === width);
  return Array.from({ length: width }, (_, column) => {
    const seen: Record<CellKind, number> = { number: 0, time: 0, missing: 0, text: 0 };
    for (const row of rows) seen[cellKind(row[column]!, decimal)]++;
    if (seen.number + seen.time + seen.text === 0) return 'missing';
    if (seen.text > seen.number + seen.time) return 'text';
    return seen.time > seen.number ? 'time' : 'number';
  });
}

/** A row: right width, numbers or times in at least half of the columns that usually have them, and in the first of those. */
function looksLikeRow(record: readonly string[], width: number, kinds: readonly CellKind[], decimal: DecimalMark): boolean {
  if (record.length !== width) return false;
  let typed = 0;
  let right = 0;
  let numbers = 0;
  for (let column = 0; column < width; column++) {
    if (!isTyped(kinds[column]!)) continue;
    const kind = cellKind(record[column]!, decimal);
    if (typed === 0 && kind === 'text') return false;
    typed++;
    if (kind !== 'text') right++;
    if (isTyped(kind)) numbers++;
  }
  return numbers > 0 && right * 2 >= typed;
}

type Above = Pick<Structure, 'header' | 'headerAt' | 'units' | 'unitsAt' | 'mismatch'>;

function headerAbove(records: Records, first: number, width: number, decimal: DecimalMark): Above {
  const candidate = previousNames(records, first, width);
  if (candidate < 0) return NO_HEADER;
  const above = previousNames(records, candidate, width);
  const units = fitted(records.row(candidate), width);
  if (above >= 0 && units && isUnitsLine(units)) {
    const names = fitted(records.row(above), width);
    if (names && isHeader(names, decimal)) return { header: names, headerAt: above, units, unitsAt: candidate, mismatch: false };
  }
  if (units && isHeader(units, decimal)) return { ...NO_HEADER, header: units, headerAt: candidate };
  const other = records.row(candidate);
  if (other.length > 1 && other.every((cell) => cellKind(cell, decimal) === 'text')) {
    return { ...NO_HEADER, header: other.map((cell) => cell.trim()), headerAt: candidate, mismatch: true };
  }
  return NO_HEADER;
}

const NO_HEADER: Above = { header: null, headerAt: -1, units: null, unitsAt: -1, mismatch: false };

/**
 * A delimiter at the end of every line makes a column without a name and without a cell. Where that column has a name, the header holds
 * a name too many, and which one nobody can tell.
 */
function oneNameTooMany(above: Above, records: Records, sample: readonly (readonly string[])[]): Above {
  const { header, headerAt } = above;
  if (header === null || above.mismatch || header.at(-1) === '') return above;
  const rows = sample.filter((record) => record.length === header.length);
  if (rows.filter((record) => record.at(-1)!.trim() === '').length * 2 <= rows.length) return above;
  const names = records.row(headerAt);
  return names.length > header.length && names.at(-1)?.trim() === ''
    ? { ...above, header: names.slice(0, -1), mismatch: true }
    : above;
}

/** Markers that may stand between a header and its rows. */
const MOST_MARKERS = 10;

/** The record above that can hold names: blank lines and markers are passed over. */
function previousNames(records: Records, from: number, width: number): number {
  let markers = 0;
  for (let k = from - 1; k >= 0; k--) {
    const record = records.row(k);
    if (isBlankRecord(record)) continue;
    if (width < 2 || !isMarker(record)) return k;
    if (++markers > MOST_MARKERS) return -1;
  }
  return -1;
}

/** Names fitted to the width where they differ by empty fields at the end alone (a trailing delimiter); else null. */
function fitted(record: readonly string[], width: number): string[] | null {
  const names = record.map((cell) => cell.trim());
  while (names.length > width && names.at(-1) === '') names.pop();
  return names.length === width ? names : null;
}

/** Names: some text, and no column's own kind of value among them. A header of one column must not be prose. */
function isHeader(names: readonly string[], decimal: DecimalMark): boolean {
  const kinds = names.map((name) => cellKind(name, decimal));
  const text = kinds.filter((kind) => kind === 'text').length;
  return text > 0 && text * 2 >= kinds.filter((kind) => kind !== 'missing').length && !kinds.includes('time');
}

/** Every filled cell is a unit, bare or in brackets, and at least one is. */
function isUnitsLine(cells: readonly string[]): boolean {
  const filled = cells.map((cell) => cell.replace(/^[[(]\s*|\s*[\])]$/g, '')).filter((cell) => cell !== '' && cell !== '-');
  return (
    filled.some((cell) => readUnit(cell) !== undefined) &&
    filled.every((cell) => readUnit(cell) !== undefined || /^(h+:m+(:s+)?|hh?:mm:ss|date|time|units?|einheit(en)?)$/i.test(cell))
  );
}

/** Record after the last row: what follows is text, not a row that came out short. */
function footerStart(records: Records, first: number, isRow: (record: readonly string[]) => boolean, decimal: DecimalMark): number {
  let end = records.count;
  while (end > first + 1) {
    const record = records.row(end - 1);
    if (isRow(record) || (!isBlankRecord(record) && (isTyped(cellKind(record[0]!, decimal)) || isMostlyDigits(record)))) break;
    end--;
  }
  return end;
}

/** Readings that another delimiter parts are no text, though no cell is a number. */
function isMostlyDigits(record: readonly string[]): boolean {
  const written = record.join('').replace(/\s/g, '');
  return written.replace(/[^\d.,;:+|-]/g, '').length * 2 > written.length && /^[-+.,]?\d/.test(written);
}

/** Names are short; a sentence with commas is none. */
const NAME_WORDS = 4;

/** Header only: the one line, or the last one below other text, of three names or more. */
function withoutRows(records: Records, decimal: DecimalMark): Structure {
  const filled: number[] = [];
  for (let k = 0; k < records.count; k++) if (!isBlankRecord(records.row(k))) filled.push(k);
  const last = filled.at(-1) ?? -1;
  const named =
    last >= 0 && records.width(last) > 2 && records.row(last).every((cell) => cell.trim().split(/\s+/).length <= NAME_WORDS);
  const at = filled.length === 1 || named ? last : -1;
  const names = at >= 0 ? records.row(at).map((cell) => cell.trim()) : null;
  const end = records.count;
  const rest = { units: null, unitsAt: -1, first: end, firstRow: end, end, mismatch: false };
  if (!names || !isHeader(names, decimal)) return { width: 0, header: null, headerAt: -1, kinds: [], ...rest };
  return { width: names.length, header: names, headerAt: at, kinds: names.map(() => 'missing' as const), ...rest };
}
