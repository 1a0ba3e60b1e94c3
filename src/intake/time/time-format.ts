/** How a time column is to be read: declared, or the one of a fixed list that fits the whole column. */
import { error, type Problem } from '../../problem.ts';
import { nearestUnit, readUnit, type Unit } from '../../quantities/units.ts';
import { type DateOrder, dateParts, inDigits, isCivil, isMinutes, isPair } from '../cells/civil.ts';
import { headerUnit, unitSpelling } from '../cells/header-units.ts';
import { parseNumber } from '../cells/numbers.ts';
import type { Inference, LogDeclaration, TimeFormat } from '../log.ts';
import type { Sheet } from '../sheet/open.ts';
import { epochUnit, sampleCells, type TimeColumn } from './time-column.ts';

export interface TimeReading {
  readonly format: TimeFormat;
  /** Of numbers: how many seconds one counts, as a unit. Of a clock: what its first number counts. */
  readonly unit: Unit;
  readonly order: DateOrder;
}

export interface FormatChoice {
  readonly reading: TimeReading | null;
  readonly problems: readonly Problem[];
  readonly inferences: readonly Inference[];
}

type Declaration = Pick<LogDeclaration, 'time' | 'place'>;

const SECOND: Unit = { canonical: 's', factor: 1, offset: 0, decimal: 0 };

/** Chooses format, unit and order of the date for a time column. */
export function chooseFormat(sheet: Sheet, column: TimeColumn, declaration: Declaration): FormatChoice {
  const declared = declaration.time?.format;
  const fitting = formatsOf(column);
  if (declared !== undefined && !fitting.includes(declared)) return doesNotFit(sheet, column, declared, fitting, declaration);
  if (column.shape === 'number') return numberFormat(sheet, column, declaration);
  const format = declared ?? fitting[0];
  if (format === undefined) return doesNotFit(sheet, column, 'iso8601', fitting, declaration);
  if (format === 'clock') return clockFormat(sheet, column, declaration);
  return civilFormat(sheet, column, declaration);
}

function formatsOf(column: TimeColumn): TimeFormat[] {
  if (column.shape === 'number') return ['elapsed', 'epoch'];
  if (column.shape === 'clock') return ['clock'];
  return column.shape === 'none' ? [] : ['iso8601'];
}

function doesNotFit(
  sheet: Sheet,
  column: TimeColumn,
  format: TimeFormat,
  fitting: readonly TimeFormat[],
  declaration: Declaration,
): FormatChoice {
  const cell = sampleCells(sheet, column.fields[0]!)[0] ?? '';
  const expected =
    fitting.length > 0 ? fitting.join(' or ') : 'elapsed or epoch numbers, year-month-day with a clock time, or hh:mm:ss';
  const found = `the time column \`${column.name}\` holds \`${cell.slice(0, 40)}\`, which is not ${format}`;
  return {
    reading: null,
    problems: [error('time-format', declaration.place, found, { expected, remedy: 'name another column, or correct `format`' })],
    inferences: [],
  };
}

const HOUR: Unit = { canonical: 's', factor: 3600, offset: 0, decimal: 0 };
const MINUTE: Unit = { canonical: 's', factor: 60, offset: 0, decimal: 0 };

/** Rows at either end of a log that show whether its times grow longer. */
const ENDS = 5;

/** In the name of a column: what the first number of its times counts. */
const NAMES_HOURS = /clock|uhr|of.?day|hh?:mm/i;
const NAMES_MINUTES = /(?<![\p{L}:])mm?:ss?/iu;

/**
 * Hours, minutes and seconds; or minutes and seconds, where a fraction, the name or the author says so. No size of a number says it: hours
 * count on beyond 24 too.
 */
function clockFormat(sheet: Sheet, column: TimeColumn, declaration: Declaration): FormatChoice {
  const field = column.fields[0]!;
  const cells = sampleCells(sheet, field);
  const declared = declaration.time?.unit;
  const told = declared === undefined ? null : timeUnit(declared);
  const undecided = { reading: null, problems: [firstNumber(column, cells[0] ?? '', declaration)], inferences: [] };
  if (declared !== undefined && told?.factor !== HOUR.factor && told?.factor !== MINUTE.factor) return undecided;
  const pairs = isMost(cells, isPair);
  const byName = { hours: NAMES_HOURS.test(column.name), minutes: NAMES_MINUTES.test(column.name) };
  const proved = isMost(cells, isMinutes);
  const minutes = proved || (byName.minutes && !byName.hours);
  const hours = !minutes && !growsLonger(sheet, field) && (!pairs || (byName.hours && !byName.minutes));
  if (told === null && !minutes && !hours) return undecided;
  const unit = told ?? (minutes ? MINUTE : HOUR);
  const statement =
    unit.factor === MINUTE.factor
      ? `\`${column.name}\` is read as minutes and seconds.`
      : `\`${column.name}\` is read as hours, minutes and seconds without a date; a fall of nearly 24 h is midnight.`;
  const said = declaration.time?.format ?? declared;
  return {
    reading: { format: 'clock', unit, order: 'ymd' },
    problems: [],
    inferences: said === undefined ? [{ method: 'time-format', statement }] : [],
  };
}

function isMost(cells: readonly string[], test: (cell: string) => boolean): boolean {
  return cells.filter(test).length * 2 > cells.length;
}

/** Whether times begin with two numbers and end with three: `59:58` before `1:00:02` counts minutes, whatever the name says. */
function growsLonger({ structure: { first, end, width }, records }: Sheet, field: number): boolean {
  const texts = (from: number) =>
    Array.from({ length: Math.min(ENDS, end - first) }, (_, k) => from + k)
      .filter((record) => records.width(record) === width)
      .map((record) => records.cell(record, field).trim());
  return isMost(texts(first), isPair) && isMost(texts(Math.max(first, end - ENDS)), (text) => !isPair(text) && isCivil(text));
}

function firstNumber({ name }: TimeColumn, cell: string, { place }: Declaration): Problem {
  const found = `the times in \`${name}\` (such as ${cell.slice(0, 40)}) can be hours and minutes or minutes and seconds`;
  return error('time-clock-undecided', place, found, {
    expected: '`unit: h` or `unit: min`, which says what the first number counts',
    remedy: `below \`log\`, write \`file\` and \`time\`, and below \`time\` \`column: "${name}"\` and \`unit: min\`, if the logger counts minutes and seconds`,
  });
}

function numberFormat(sheet: Sheet, column: TimeColumn, declaration: Declaration): FormatChoice {
  const field = column.fields[0]!;
  const values = sampleCells(sheet, field).map((cell) => parseNumber(cell, sheet.dialect.decimal));
  const magnitude = magnitudeOf(values);
  const format = declaration.time?.format ?? (magnitude ? 'epoch' : 'elapsed');
  const stated = statedUnit(sheet, field, declaration);
  if ('problem' in stated) return { reading: null, problems: [stated.problem], inferences: [] };
  if (magnitude && format === 'epoch' && stated.how && stated.unit?.factor !== readUnit(magnitude)?.factor)
    return {
      reading: null,
      problems: [otherMagnitude(column, stated.spelling, stated.how, magnitude, declaration)],
      inferences: [],
    };
  const inferences: Inference[] = [];
  if (declaration.time?.format === undefined) {
    const why =
      format === 'epoch' ? 'its numbers lie where epoch times of this century lie' : 'its numbers are too small for epoch times';
    inferences.push({ method: 'time-format', statement: `\`${column.name}\` is read as ${format} time: ${why}.` });
  }
  if (stated.how)
    inferences.push({
      method: 'time-unit',
      statement: `The unit of \`${column.name}\`, ${stated.spelling}, stands ${stated.how}.`,
    });
  if (stated.unit) return { reading: { format, unit: stated.unit, order: 'ymd' }, problems: [], inferences };
  if (format === 'epoch' && magnitude) {
    inferences.push({ method: 'time-unit', statement: `\`${column.name}\` is read in ${magnitude}, by the size of its numbers.` });
    return { reading: { format, unit: readUnit(magnitude)!, order: 'ymd' }, problems: [], inferences };
  }
  return { reading: null, problems: [unitMissing(column, format, values, declaration)], inferences: [] };
}

/** What most numbers are as epoch times; a damaged cell or two are not asked. null where most are none. */
function magnitudeOf(values: readonly number[]): ReturnType<typeof epochUnit> {
  const counts = new Map<ReturnType<typeof epochUnit>, number>();
  for (const value of values) if (!Number.isNaN(value)) counts.set(epochUnit(value), (counts.get(epochUnit(value)) ?? 0) + 1);
  const most = Math.max(...counts.values());
  return [...counts].find(([, count]) => count === most)?.[0] ?? null;
}

function otherMagnitude({ name }: TimeColumn, spelling: string, how: string, magnitude: string, { place }: Declaration): Problem {
  const found = `\`${name}\` counts in ${magnitude} by the size of its numbers, but ${spelling} stands ${how}`;
  return error('time-unit-conflict', place, found, {
    expected: 'epoch time in the unit that the file states',
    remedy: `below \`log\`, write \`file\` and \`time\`, and below \`time\` \`column: "${name}"\` and \`unit: ${magnitude}\`, if that is right`,
  });
}

type StatedUnit = { readonly unit: Unit | null; readonly spelling: string; readonly how: string } | { readonly problem: Problem };

function statedUnit(sheet: Sheet, field: number, declaration: Declaration): StatedUnit {
  const declared = declaration.time?.unit;
  if (declared !== undefined) {
    const unit = timeUnit(declared);
    if (unit) return { unit, spelling: declared, how: '' };
    const nearest = nearestUnit(declared);
    const more = nearest === undefined || !timeUnit(nearest) ? {} : { remedy: `did you mean \`${nearest}\`?` };
    return {
      problem: error('unit-unknown', declaration.place, `the time has the unit \`${declared}\``, {
        expected: 'a unit of time: ms, s, min, h',
        ...more,
      }),
    };
  }
  return unitInFile(sheet, field);
}

function unitInFile(sheet: Sheet, field: number): { readonly unit: Unit | null; readonly spelling: string; readonly how: string } {
  const name = sheet.names?.[field] ?? '';
  const found = headerUnit(name, undefined, (spelling) => timeUnit(spelling) !== null);
  const unit = found && timeUnit(found.spelling);
  if (found && unit) return { unit, spelling: found.spelling, how: `${found.form} in the header` };
  const line = sheet.units?.[field]?.replace(/^[[(]\s*|\s*[\])]$/g, '') ?? '';
  const fromLine = timeUnit(line);
  return fromLine ? { unit: fromLine, spelling: line, how: 'in the line of units' } : { unit: null, spelling: '', how: '' };
}

/** The unit of time that the file states for a column, or null. */
export function columnTimeUnit(sheet: Sheet, field: number): Unit | null {
  return unitInFile(sheet, field).unit;
}

/** A unit of time, or null. */
function timeUnit(text: string): Unit | null {
  const spelling = unitSpelling(text);
  const unit = spelling === undefined ? undefined : readUnit(spelling);
  return unit?.canonical === 's' ? unit : null;
}

/** Days since the end of 1899 lie here from 1954 to 2119, as spreadsheets write a date and time. */
const SERIAL_DAYS = [20_000, 80_000] as const;

function unitMissing(column: TimeColumn, format: TimeFormat, values: readonly number[], declaration: Declaration): Problem {
  const [low, high] = SERIAL_DAYS;
  const days = values.every((value) => value > low && value < high) && values.some((value) => !Number.isInteger(value));
  const unit = days ? '`unit: d`, if a spreadsheet wrote days' : '`unit: s`, if the logger counts seconds';
  return error('time-unit-missing', declaration.place, `no unit is stated for the ${format} time in \`${column.name}\``, {
    expected: 'ms, s, min or h',
    remedy: `below \`log\`, write \`file\` and \`time\`, and below \`time\` \`column: "${column.name}"\` and ${unit}`,
  });
}

/** Order of day and month: proved by a number above 12, without effect where all dates are equal, else by the dots; never guessed from slashes. */
function civilFormat(sheet: Sheet, column: TimeColumn, declaration: Declaration): FormatChoice {
  const dates = datesOf(sheet, column.fields[0]!);
  const orders = ordersThatFit(dates.parts);
  const [first] = orders;
  const reading = (order: DateOrder): TimeReading => ({ format: 'iso8601', unit: SECOND, order });
  const say = (statement: string) => (declaration.time?.format && first === 'ymd' ? [] : [{ method: 'time-format', statement }]);
  if (first === undefined && dates.parts.length > 0 && dates.parts.every((parts) => parts.every((part) => part < 100)))
    return { reading: null, problems: [shortYear(sheet, column, dates.sample, declaration)], inferences: [] };
  if (first === undefined) return doesNotFit(sheet, column, 'iso8601', ['iso8601'], declaration);
  if (first === 'ymd') {
    return {
      reading: reading('ymd'),
      problems: [],
      inferences: say(
        `\`${column.name}\` is read as year, month, day${column.shape === 'date' ? '' : ' and clock time'} (ISO 8601).`,
      ),
    };
  }
  const declared = declaration.time?.order;
  if (declared !== undefined) {
    if (orders.includes(declared)) return { reading: reading(declared), problems: [], inferences: [] };
    return { reading: null, problems: [wrongOrder(column, declared, dates.sample, declaration)], inferences: [] };
  }
  if (orders.length === 1)
    return {
      reading: reading(first),
      problems: [],
      inferences: say(`\`${column.name}\` is read ${wordsOf(first)}: a number above 12 proves it.`),
    };
  if (dates.distinct === 1)
    return {
      reading: reading(first),
      problems: [],
      inferences: say(
        `All dates in \`${column.name}\` are equal: they are read ${wordsOf(first)}, and elapsed time is the same the other way round.`,
      ),
    };
  if (dates.dotted)
    return {
      reading: reading('dmy'),
      problems: [],
      inferences: say(`\`${column.name}\` is read day first, as dotted dates are written; no date in the log proves it.`),
    };
  const problem = error(
    'date-order-unknown',
    declaration.place,
    `the dates in \`${column.name}\` (such as ${dates.sample}) can be read day first or month first, and no number above 12 tells which`,
    {
      expected: 'dates as year-month-day, or `date_order`, which says how they are written',
      remedy:
        'below `log`, write `file` and `time`, and below `time` `date_order: day first` or `date_order: month first`, as the logger writes them',
    },
  );
  return { reading: null, problems: [problem], inferences: [] };
}

function shortYear({ keys }: Sheet, { name, fields }: TimeColumn, sample: string, { place }: Declaration): Problem {
  const clock = fields[1];
  const remedy =
    clock === undefined
      ? 'have the logger write all four, or keep a copy with them beside the original and name that'
      : `to go by the clock alone, write \`file\` and \`time\` below \`log\`, and below \`time\` \`column: "${keys[clock]}"\``;
  return error('date-year-short', place, `the dates in \`${name}\` (such as ${sample}) have years of two digits`, {
    expected: 'years of four digits',
    remedy,
  });
}

function wrongOrder(column: TimeColumn, order: DateOrder, sample: string, { place }: Declaration): Problem {
  return error(
    'date-order-impossible',
    place,
    `the dates in \`${column.name}\` (such as ${sample}) cannot be read ${wordsOf(order)}`,
    {
      expected: 'an order that fits every date of the log',
      remedy: 'correct or remove `date_order` below `time`',
    },
  );
}

function wordsOf(order: DateOrder): string {
  return order === 'dmy' ? 'day first' : 'month first';
}

interface Dates {
  readonly parts: readonly (readonly [number, number, number])[];
  readonly distinct: number;
  readonly dotted: boolean;
  readonly sample: string;
}

/** Distinct dates of a column. Year-first dates need no second look, so that most logs cost one cell. */
function datesOf(sheet: Sheet, field: number): Dates {
  const { first, end, width } = sheet.structure;
  const distinct = new Map<string, readonly [number, number, number]>();
  let dotted = false;
  for (let record = first; record < end; record++) {
    if (sheet.records.width(record) !== width) continue;
    const date = inDigits(sheet.records.cell(record, field).trim()).split(/[T ]/, 1)[0]!;
    if (distinct.has(date)) continue;
    const found = dateParts(date);
    if (!found) continue;
    distinct.set(date, found.parts);
    dotted = found.mark === '.';
    if (found.parts[0] > 999) break;
  }
  const [sample = ''] = distinct.keys();
  return { parts: [...distinct.values()], distinct: distinct.size, dotted, sample };
}

function ordersThatFit(parts: readonly (readonly [number, number, number])[]): DateOrder[] {
  if (parts.length === 0) return [];
  if (parts.every(([a]) => a > 999)) return ['ymd'];
  if (!parts.every(([, , c]) => c > 999)) return [];
  const orders: DateOrder[] = [];
  if (parts.every(([a, b]) => a <= 31 && b <= 12)) orders.push('dmy');
  if (parts.every(([a, b]) => a <= 12 && b <= 31)) orders.push('mdy');
  return orders;
}
