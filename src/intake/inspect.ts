/** Front door for `npm run add`: what a file is, as far as it can be told, and why. */
import type { Problem } from '../problem.ts';
import { MISSING_MARKERS } from './cells/cells.ts';
import { flagOddities } from './cells/flag-bits.ts';
import { flagBase, isAnswer, isForeignAnswer, parseFlag } from './cells/flags.ts';
import { isGrouped } from './cells/numbers.ts';
import { numberInUnit, usualSuffix } from './columns/cell-units.ts';
import { type ColumnNumbers, columnNumbers, columnOddities } from './columns/oddities.ts';
import { type Proposal, propose, saysThrottling } from './columns/propose.ts';
import type { Inference, TimeAxis, TimeFormat } from './log.ts';
import { reporterFor } from './report/report.ts';
import { refuseForm } from './rows/form.ts';
import { interleavedColumn } from './rows/interleaved.ts';
import { findRows } from './rows/rows.ts';
import { rowsWhere } from './rows/rows-where.ts';
import { placeOfLine } from './sheet/lines.ts';
import { type LogBytes, lookedAt } from './sheet/log-bytes.ts';
import { hiddenNames, openSheet, type Sheet } from './sheet/open.ts';
import { isBlankRecord } from './sheet/structure.ts';
import { readTime } from './time/read-time.ts';
import { statedDate } from './time/stated-span.ts';
import { timeCandidates } from './time/time-column.ts';

export interface InspectedColumn extends Proposal {
  /** Name to write in `column`. */
  readonly column: string;
  readonly numbers: ColumnNumbers;
  /** In the file's own unit, one a row; NaN where there is no number. */
  readonly values: Float64Array;
  readonly oddities: readonly string[];
}

export interface LeftOut {
  readonly column: string;
  readonly why: string;
}

export interface InspectedTime {
  readonly column: string;
  readonly format: TimeFormat;
  /** True where read() would find column and unit without being told. */
  readonly certain: boolean;
  readonly axis: TimeAxis;
  /** Day of the first row as year-month-day, where the log states one: civil, or in UTC for epoch times. */
  readonly date?: string;
}

export interface Inspection {
  readonly file: string;
  readonly encoding: string;
  readonly delimiter: string;
  readonly decimal: string;
  readonly lines: number;
  readonly rows: number;
  readonly setAside: number;
  readonly time: InspectedTime | null;
  /** Columns that could be the time; the first is taken where none is declared. */
  readonly timeCandidates: readonly string[];
  readonly columns: readonly InspectedColumn[];
  /** Columns of which no channel can be made, each with the reason. */
  readonly leftOut: readonly LeftOut[];
  /** Lines before the header, after the rows, of units: as they stand. */
  readonly preamble: readonly string[];
  readonly unitsLine: string | null;
  readonly footer: readonly string[];
  readonly inferences: readonly Inference[];
  /** Where rows of several devices or channels stand in the file: what tells them apart. Those of the first are looked at. */
  readonly several?: { readonly column: string; readonly values: readonly string[] };
  /** Problems of the file itself; errors of the declaration that does not exist yet are left out but for those about time. */
  readonly problems: readonly Problem[];
}

/** Looks at a file that nobody has declared yet. Never throws. */
export function inspect(bytes: LogBytes, file: string): Inspection {
  const seen = lookedAt(bytes);
  const inspection = inspectWhole(seen, file);
  if (seen === bytes) return inspection;
  const statement = 'The log is long: it was looked at as far as its first 8 MiB go.';
  return { ...inspection, inferences: [{ method: 'beginning', statement }, ...inspection.inferences] };
}

function inspectWhole(bytes: Uint8Array, file: string): Inspection {
  const sheet = openSheet(bytes, file);
  const refusal = refuseForm(sheet);
  const chosen = refusal === null ? null : firstOfSeveral(sheet);
  if (refusal && !chosen) return { ...frame(sheet), problems: [...sheet.problems, refusal] };
  const reporter = reporterFor(sheet);
  const found = findRows(sheet, reporter);
  const place = placeOfLine(file, sheet.lines, 1);
  const where = chosen ? { rows: { column: chosen.column, value: chosen.values[0]!, place } } : {};
  const rows = { ...found, records: rowsWhere(sheet, found.records, { file, ...where }).records };
  const candidates = timeCandidates(sheet).map((candidate) => candidate.name);
  const time = inspectTime(sheet, rows.records, candidates);
  const kept = time.kept.length > 0 ? time.kept : rows.records;
  reporter.close();
  const timeFields = new Set(time.axis ? time.axis.column.split(' + ').map((key) => sheet.keys.indexOf(key)) : []);
  const fields = sheet.keys.map((_, field) => field).filter((field) => !timeFields.has(field));
  const inspected = fields.map((field) => inspectColumn(sheet, field, kept));
  return {
    ...frame(sheet),
    rows: kept.length,
    setAside: reporter.setAside.length + (rows.records.length - kept.length),
    time: time.axis ? timeOf(sheet, time.axis, time.certain, kept) : null,
    timeCandidates: candidates,
    columns: inspected.filter((column) => 'numbers' in column),
    leftOut: inspected.filter((column) => 'why' in column).filter(({ column }) => !isNameless(sheet, column)),
    inferences: [...sheet.inferences, ...rows.inferences, ...time.inferences],
    ...(chosen ? { several: chosen } : {}),
    problems: [
      ...sheet.problems,
      ...hiddenNames(sheet),
      ...(refusal ? [refusal] : []),
      ...rows.problems,
      ...time.problems,
      ...reporter.problems,
    ],
  };
}

/** The first value and the others of the column that tells several devices apart; null where there is none. */
function firstOfSeveral(sheet: Sheet): Inspection['several'] | null {
  if (sheet.structure.width === 0 || sheet.structure.mismatch) return null;
  const field = interleavedColumn(sheet);
  if (field === null) return null;
  const values = new Set<string>();
  const { firstRow, end, width } = sheet.structure;
  for (let record = firstRow; record < end; record++)
    if (sheet.records.width(record) === width) values.add(sheet.records.cell(record, field).trim());
  return { column: sheet.keys[field]!, values: [...values] };
}

function timeOf(sheet: Sheet, axis: TimeAxis, certain: boolean, kept: Int32Array): InspectedTime {
  const { column, format, start } = axis;
  const cell = kept.length > 0 ? sheet.records.cell(kept[0]!, sheet.keys.indexOf(column.split(' + ')[0]!)) : '';
  const stated = /^\s*(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})/.exec(cell);
  const civil = stated ? [stated[1], stated[2]!.padStart(2, '0'), stated[3]!.padStart(2, '0')].join('-') : undefined;
  const instant = start === null ? undefined : new Date(start * 1000).toISOString().slice(0, 10);
  const date = civil ?? instant ?? (format === 'clock' ? statedDate(sheet)?.date : undefined);
  return { column, format, certain, axis, ...(date === undefined ? {} : { date }) };
}

function frame(sheet: Sheet): Inspection {
  const { records, structure, dialect, decoded, lines } = sheet;
  const linesOf = (from: number, to: number) => {
    const texts: string[] = [];
    for (let record = from; record < to; record++)
      if (!isBlankRecord(records.row(record))) texts.push(lines.at(records.lines[record]!));
    return texts;
  };
  return {
    file: sheet.file,
    encoding: decoded.encoding,
    delimiter: dialect.delimiter,
    decimal: dialect.decimal,
    lines: lines.count,
    rows: 0,
    setAside: 0,
    time: null,
    timeCandidates: [],
    columns: [],
    leftOut: [],
    preamble: linesOf(0, structure.headerAt >= 0 ? Math.min(structure.headerAt, structure.firstRow) : structure.first),
    unitsLine: structure.unitsAt >= 0 ? lines.at(records.lines[structure.unitsAt]!) : null,
    footer: linesOf(structure.end, records.count),
    inferences: [],
    problems: [],
  };
}

interface TimeTried {
  readonly axis: TimeAxis | null;
  readonly kept: Int32Array;
  readonly certain: boolean;
  readonly problems: readonly Problem[];
  readonly inferences: readonly Inference[];
}

/** As nothing is declared first; then with the first candidate named; then as if it counted seconds, so that the rest can be shown. */
function inspectTime(sheet: Sheet, records: Int32Array, candidates: readonly string[]): TimeTried {
  const place = placeOfLine(sheet.file, sheet.lines, Math.max(1, sheet.records.lines[sheet.structure.headerAt] ?? 1));
  const base = { file: sheet.file, channels: [], repairs: [], place };
  const reporter = reporterFor(sheet);
  const plain = readTime(sheet, records, base, reporter);
  reporter.close();
  if (plain.axis) return { ...plain, certain: true, problems: [...plain.problems, ...reporter.problems] };
  const [column] = candidates;
  if (column === undefined) return { ...plain, certain: false };
  for (const time of [
    { column },
    { column, order: 'dmy' },
    { column, order: 'mdy' },
    { column, format: 'elapsed', unit: 's' },
  ] as const) {
    const tried = readTime(sheet, records, { ...base, time }, reporterFor(sheet));
    if (tried.axis) return { ...tried, certain: false, problems: [...plain.problems, ...tried.problems] };
  }
  return { ...plain, certain: false };
}

/** A delimiter at the end of every line makes a column that nobody needs to hear of. */
function isNameless({ structure, keys, records }: Sheet, column: string): boolean {
  const field = keys.indexOf(column);
  if (structure.header === null || structure.header[field] !== '') return false;
  for (let record = structure.first; record < structure.end; record++) {
    if (field < records.width(record) && records.cell(record, field).trim() !== '') return false;
  }
  return true;
}

/** Cells that show what follows the numbers of a column. */
const SHOWING = 50;

function inspectColumn(sheet: Sheet, field: number, kept: Int32Array): InspectedColumn | LeftOut {
  const cells = Array.from(kept, (record) => sheet.records.cell(record, field).trim());
  const mark = sheet.dialect.decimal;
  const shown = cells.slice(0, SHOWING).filter((cell) => !MISSING_MARKERS.has(cell));
  const suffix = usualSuffix(shown, mark);
  const strip = (cell: string) => (suffix === undefined ? cell : (numberInUnit(cell, suffix, mark)?.text ?? cell));
  const plain = columnNumbers(cells, sheet.dialect.decimal, strip, (cell) => MISSING_MARKERS.has(cell));
  const filled = cells.filter((cell) => !MISSING_MARKERS.has(cell));
  const name = sheet.names?.[field] ?? sheet.keys[field]!;
  const answers = leftOutAnswers(name, filled);
  if (answers !== null) return { column: sheet.keys[field]!, why: answers };
  const { base } = flagBase(filled);
  // A fan that is `off` and then at 1200 rpm is no flag.
  const answered = filled.some(isAnswer);
  const isFlag = (cell: string) => (answered ? isAnswer(cell) || /^[01]$/.test(cell) : !Number.isNaN(parseFlag(cell, base)));
  const flagged = filled.length > 0 && plain.numbers.count < filled.length && filled.every(isFlag);
  const { numbers, values } = flagged
    ? columnNumbers(
        cells.map((cell) => String(parseFlag(cell, base))),
        '.',
        (cell) => cell,
        () => true,
      )
    : plain;
  if (filled.length === 0) return { column: sheet.keys[field]!, why: 'it is empty' };
  if (numbers.count * 2 <= filled.length) return { column: sheet.keys[field]!, why: whyNoNumbers(filled, sheet) };
  const unitsLine = sheet.units?.[field];
  const evidence = {
    name,
    ...(unitsLine ? { unitsLine } : {}),
    ...(suffix === undefined ? {} : { suffix }),
    min: numbers.min,
    max: numbers.max,
    flags: flagged,
  };
  const proposal = propose(evidence);
  const unstated = proposal.quantity === 'other' && proposal.unit === undefined;
  return {
    column: sheet.keys[field]!,
    ...proposal,
    numbers,
    values,
    oddities: proposal.quantity === 'throttle_flag' ? flagOddities(values) : columnOddities(numbers, values, unstated),
  };
}

/** Why a column of yes and no is left out; null where it is no such column, or one that its name says is of throttling. */
function leftOutAnswers(name: string, filled: readonly string[]): string | null {
  if (filled.length === 0 || !filled.every((cell) => isAnswer(cell) || isForeignAnswer(cell))) return null;
  if (filled.some(isForeignAnswer))
    return 'it says yes and no in a language that is not read; a flag says yes or no, true or false, 1 or 0';
  return saysThrottling(name)
    ? null
    : 'it says yes and no, and its name does not say of throttling; where it does tell of it, declare it as a `throttle_flag`';
}

function whyNoNumbers(filled: readonly string[], { dialect }: Sheet): string {
  return filled.filter((cell) => isGrouped(cell, dialect.decimal)).length * 2 > filled.length
    ? 'its numbers have a mark between thousands, which is not read: have the logger write them without'
    : 'most of its cells are no numbers';
}
