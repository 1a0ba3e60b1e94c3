/** The one time axis of a log, and which records stay on it. */
import { error, type Problem, warning } from '../../problem.ts';
import type { Inference, LogDeclaration, Repair, TimeAxis } from '../log.ts';
import type { Acknowledged } from '../report/known.ts';
import { shiftTimes } from '../report/repairs.ts';
import type { Reporter } from '../report/report.ts';
import { placeOfLine } from '../sheet/lines.ts';
import type { Sheet } from '../sheet/open.ts';
import { isBlankRecord } from '../sheet/structure.ts';
import { spanProblems, statedDate } from './stated-span.ts';
import { chooseTime, EVERY, type TimeColumn } from './time-column.ts';
import { chooseFormat, type TimeReading } from './time-format.ts';
import { findGaps, isOrdered, medianStep, orderRows, stepChange } from './time-order.ts';
import { readTimes, type TimeValues } from './time-values.ts';

export interface ReadTime {
  readonly axis: TimeAxis | null;
  /** Columns that the time is read from. */
  readonly fields: readonly number[];
  /** Trusted records in order. */
  readonly kept: Int32Array;
  readonly shifted: ReadonlyMap<Repair, number>;
  readonly problems: readonly Problem[];
  readonly inferences: readonly Inference[];
}

/** Reads the time of the candidate records, applies declared shifts, sets aside what has no time or runs backward. */
export function readTime(sheet: Sheet, records: Int32Array, declaration: LogDeclaration, reporter: Reporter): ReadTime {
  if (declaration.time?.every !== undefined) return steppedTime(sheet, records, declaration, declaration.time.every);
  const choice = chooseTime(sheet, declaration);
  if (!choice.column) return failed(choice.problems);
  const format = chooseFormat(sheet, choice.column, declaration);
  const known = [...choice.inferences, ...format.inferences];
  if (records.length === 0) return withoutRows(choice.column, format.reading, known);
  if (!format.reading) return failed(format.problems);
  const times = readTimes(sheet, choice.column, format.reading, records, declaration);
  if (times.problems.length > 0) return failed(times.problems);
  const shifted = shiftTimes(sheet, records, times.values, declaration.repairs);
  const readable = withTime(sheet, choice.column, records, times.values, reporter);
  if (readable.records.length === 0) return failed([noTime(choice.column, declaration)]);
  const ordered = inOrder(readable.records, readable.times, reporter, times.untold);
  const kept = ordered.records;
  const start = times.origin === null ? null : roundNano(times.origin + ordered.times[0]!);
  const seconds = sinceFirst(ordered.times);
  const axis = axisOf(seconds, choice.column, format.reading, start);
  if (standsStill(seconds)) return failed([noStep(sheet, choice.column, kept, declaration)]);
  return {
    axis,
    fields: choice.column.fields,
    kept,
    shifted,
    problems: [...axisProblems(sheet, axis, kept, reporter.known), ...spanProblems(sheet, axis, choice.column, kept)],
    inferences: [...known, ...times.inferences, ...dateAbove(sheet, format.reading)],
  };
}

/** Where nothing can be read. */
export const NO_TIME: ReadTime = failed([]);

/** What stands for the column where no column is read. */
const ROW_NUMBER = '(row number)';

/** Rows at the step that the author states. A row that was set aside has taken its step too. */
function steppedTime(sheet: Sheet, records: Int32Array, declaration: LogDeclaration, every: number): ReadTime {
  const place = declaration.rows ? (_: number, k: number) => k : placesOf(sheet);
  const times = Float64Array.from(records, (record, k) => place(record, k) * every);
  const shifted = shiftTimes(sheet, records, times, declaration.repairs);
  const seconds = Float64Array.from(times, (time) => roundNano(time - times[0]!));
  const step = medianStep(seconds);
  const axis: TimeAxis = {
    seconds,
    column: ROW_NUMBER,
    format: 'elapsed',
    start: declaration.time?.start ?? null,
    step,
    gaps: findGaps(seconds, step),
  };
  const statement = `The log holds no time: its rows are taken to be ${every} s apart, as declared.`;
  return { axis, fields: [], kept: records, shifted, problems: [], inferences: [{ method: 'stated-step', statement }] };
}

/** How many rows stand before a record, those that were set aside included. */
function placesOf({ structure, records }: Sheet): (record: number) => number {
  const places = new Int32Array(records.count);
  let rows = 0;
  for (let record = structure.firstRow; record < structure.end; record++) {
    places[record] = rows;
    if (!isBlankRecord(records.row(record))) rows++;
  }
  return (record) => places[record]!;
}

/** The date of a log whose rows have a clock only, where a line above the header states it. */
function dateAbove(sheet: Sheet, { format }: Pick<TimeReading, 'format'>): Inference[] {
  const stated = format === 'clock' ? statedDate(sheet) : null;
  if (!stated) return [];
  const statement = `Line ${stated.line} gives the date, ${stated.date}; the rows have a clock only.`;
  return [{ method: 'date-above', statement }];
}

function failed(problems: readonly Problem[]): ReadTime {
  return { axis: null, fields: [], kept: new Int32Array(0), shifted: new Map(), problems, inferences: [] };
}

function withoutRows(column: TimeColumn, reading: TimeReading | null, inferences: readonly Inference[]): ReadTime {
  const axis = axisOf(new Float64Array(0), column, reading ?? { format: 'elapsed' }, null);
  return { axis, fields: column.fields, kept: new Int32Array(0), shifted: new Map(), problems: [], inferences };
}

function withTime(
  sheet: Sheet,
  column: TimeColumn,
  records: Int32Array,
  times: Float64Array,
  reporter: Reporter,
): { records: Int32Array; times: Float64Array } {
  if (!hasNaN(times)) return { records, times };
  const good: number[] = [];
  for (let k = 0; k < times.length; k++) {
    if (!Number.isNaN(times[k])) good.push(k);
    else {
      const text = column.fields.map((field) => sheet.records.cell(records[k]!, field).trim()).join(' ');
      reporter.row(
        records[k]!,
        'time-unreadable',
        text === '' ? 'the row has no time' : 'the time cannot be read',
        text === '' ? undefined : `the time \`${text.slice(0, 40)}\` cannot be read`,
      );
    }
  }
  return { records: Int32Array.from(good, (k) => records[k]!), times: Float64Array.from(good, (k) => times[k]!) };
}

function hasNaN(times: Float64Array): boolean {
  for (let k = 0; k < times.length; k++) if (Number.isNaN(times[k])) return true;
  return false;
}

/** Records whose times never fall, and these times; the others are set aside. */
function inOrder(
  records: Int32Array,
  times: Float64Array,
  reporter: Reporter,
  untold: TimeValues['untold'],
): { records: Int32Array; times: Float64Array } {
  if (isOrdered(times)) return { records, times };
  const { kept, disordered } = orderRows(times);
  for (const { index, why } of disordered) {
    if (why === 'ahead') reporter.row(records[index]!, 'time-ahead', 'the time is ahead of the rows after it');
    else if (untold)
      reporter.row(records[index]!, 'time-turn-untold', `the time runs backward, and its step is too long to tell ${untold}`);
    else reporter.row(records[index]!, 'time-backward', 'the time runs backward');
  }
  return { records: kept.map((index) => records[index]!), times: Float64Array.from(kept, (index) => times[index]!) };
}

/** Changes the times in place: a log of a million rows has no room to spare. */
function sinceFirst(times: Float64Array): Float64Array {
  const first = times[0]!;
  for (let row = 0; row < times.length; row++) times[row] = roundNano(times[row]! - first);
  return times;
}

/** Takes off the noise of binary fractions: no logger tells less than a nanosecond. */
export function roundNano(seconds: number): number {
  return Math.abs(seconds) < 9e6 ? Math.round(seconds * 1e9) / 1e9 : Math.round(seconds * 1e6) / 1e6;
}

function axisOf(seconds: Float64Array, column: TimeColumn, reading: Pick<TimeReading, 'format'>, start: number | null): TimeAxis {
  const step = medianStep(seconds);
  return { seconds, column: column.name, format: reading.format, start, step, gaps: findGaps(seconds, step) };
}

/** Rows that show that a time does not go on. */
const SHOWING = 10;

function standsStill(seconds: Float64Array): boolean {
  return seconds.length >= SHOWING && seconds.at(-1) === 0;
}

/** A spreadsheet that wrote 1.77348E+09 has thrown the digits away that told rows apart. */
function noStep({ records }: Sheet, column: TimeColumn, kept: Int32Array, { file, place }: LogDeclaration): Problem {
  const cell = records.cell(kept[0]!, column.fields[0]!).trim();
  const found = `every row of ${file} has the same time in \`${column.name}\` (\`${cell.slice(0, 40)}\`)`;
  return error('time-stands-still', place, found, {
    expected: 'a time that goes on from row to row',
    remedy: `name another column under \`time\`, or the file as the logger wrote it, before a program shortened its numbers; where you know the step from row to row, ${EVERY}`,
  });
}

function noTime(column: TimeColumn, declaration: LogDeclaration): Problem {
  return error('time-unreadable', declaration.place, `no row of ${declaration.file} has a readable time in \`${column.name}\``, {
    remedy: 'name another column under `time`',
  });
}

/** What an author can do about what is so for good. */
const KNOWN = "where you know why, say so: `known` in the run's file takes its `lines` and the `reason`";

function axisProblems(sheet: Sheet, axis: TimeAxis, kept: Int32Array, known: Acknowledged): Problem[] {
  const problems: Problem[] = [];
  const lineOf = (row: number) => sheet.records.lines[kept[row]!]!;
  const place = (row: number) => placeOfLine(sheet.file, sheet.lines, lineOf(row));
  const gaps = axis.gaps.filter(({ row, length }) => !known.takes(lineOf(row), `a gap of ${seconds(length)}`));
  const [gap] = gaps;
  if (gap) {
    const longest = Math.max(...gaps.map(({ length }) => length));
    const count = gaps.length === 1 ? 'a gap' : `${gaps.length} gaps, this is the first`;
    problems.push(
      warning(
        'time-gap',
        place(gap.row),
        `${count}: ${seconds(gap.length)} without a row, where the usual step is ${seconds(axis.step ?? 0)} (longest ${seconds(longest)})`,
        { remedy: KNOWN },
      ),
    );
  }
  const repeats = repeatsOf(axis.seconds);
  if (repeats.count > 0) {
    const others = repeats.count > 1 ? `, and ${repeats.count - 1} more do` : '';
    problems.push(
      warning('time-repeated', place(repeats.first), `this row repeats the time of the row before${others}; all are kept`),
    );
  }
  const change = stepChange(axis.seconds);
  if (change)
    problems.push(
      warning(
        'time-step-changed',
        place(change.row),
        `from about this line on the step between rows is ${seconds(change.after)}; at the start it is ${seconds(change.before)}`,
      ),
    );
  return problems;
}

function repeatsOf(times: Float64Array): { first: number; count: number } {
  let first = -1;
  let count = 0;
  for (let row = 1; row < times.length; row++) {
    if (times[row] !== times[row - 1]) continue;
    count++;
    if (first < 0) first = row;
  }
  return { first, count };
}

function seconds(value: number): string {
  return `${Number(value.toPrecision(4))} s`;
}
