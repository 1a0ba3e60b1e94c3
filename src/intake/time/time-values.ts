/** Cells of the time column -> seconds on one scale, one a record; NaN where a cell cannot be read. */
import { error, type Problem } from '../../problem.ts';
import { nearest } from '../../quantities/nearest.ts';
import { readCivil, readMinutes, readSpan } from '../cells/civil.ts';
import { type ZoneReader, zoneNames, zoneReader } from '../cells/zone.ts';
import type { Inference, LogDeclaration } from '../log.ts';
import type { Sheet } from '../sheet/open.ts';
import type { TimeColumn } from './time-column.ts';
import type { TimeReading } from './time-format.ts';
import { isOrdered, medianStep } from './time-order.ts';

export interface TimeValues {
  /** Seconds since `origin`. */
  readonly values: Float64Array;
  /** Epoch seconds of zero; null where the log does not tell it. */
  readonly origin: number | null;
  readonly problems: readonly Problem[];
  readonly inferences: readonly Inference[];
  /** What a clock cannot tell, because its rows lie too far apart: then it seems to run backward there. */
  readonly untold?: 'a full hour' | 'midnight';
}

/** Reads the time of the given records. */
export function readTimes(
  sheet: Sheet,
  column: TimeColumn,
  reading: TimeReading,
  records: Int32Array,
  declaration: Pick<LogDeclaration, 'time' | 'place'>,
): TimeValues {
  const start = declaration.time?.start;
  if (start !== undefined && reading.format !== 'elapsed') return unusedStart(column, reading, declaration);
  if (reading.format === 'elapsed') return readNumbers(sheet, column, reading, records, start ?? null);
  if (reading.format === 'epoch') return readNumbers(sheet, column, reading, records, 0);
  if (reading.format === 'clock') return readClock(sheet, column, reading, records);
  return readDates(sheet, column, reading, records, declaration);
}

/** @param zero - epoch seconds at which the column is zero; null where nobody says it. */
function readNumbers(sheet: Sheet, column: TimeColumn, reading: TimeReading, records: Int32Array, zero: number | null): TimeValues {
  const field = column.fields[0]!;
  const { factor } = reading.unit;
  const divisor = factor < 1 ? Math.round(1 / factor) : 0;
  const values = new Float64Array(records.length);
  sheet.records.numbers(records, field, sheet.dialect.decimal, 0, values);
  const first = firstOf(values);
  // Differences first: an epoch time in ms or µs has no digits left for a fraction.
  for (let k = 0; k < records.length; k++) values[k] = divisor > 0 ? (values[k]! - first) / divisor : (values[k]! - first) * factor;
  const start = divisor > 0 ? first / divisor : first * factor;
  return { values, origin: zero === null || Number.isNaN(start) ? null : zero + start, problems: [], inferences: [] };
}

/** The first number; the one after it where a torn first is so large that a double has no digits left for the differences. */
function firstOf(values: Float64Array): number {
  const at = values.findIndex((value) => !Number.isNaN(value));
  const first = values[at] ?? Number.NaN;
  const next = values.subarray(at + 1).find((value) => !Number.isNaN(value)) ?? first;
  return first > Number.MAX_SAFE_INTEGER && next <= Number.MAX_SAFE_INTEGER ? next : first;
}

function unusedStart(column: TimeColumn, { format }: TimeReading, { place }: Pick<LogDeclaration, 'place'>): TimeValues {
  const found = `\`start\` says when an elapsed time was zero, and \`${column.name}\` is read as ${format}`;
  const problem = error('time-start', place, found, {
    expected: 'a `start` only of elapsed time',
    remedy: 'remove `start` below `time`, or correct `format`',
  });
  return { values: new Float64Array(0), origin: null, problems: [problem], inferences: [] };
}

const DAY = 86400;
const HOUR = 3600;

/** A clock begins again after a day, or after an hour where it shows minutes and seconds only. */
function readClock(sheet: Sheet, column: TimeColumn, { unit }: TimeReading, records: Int32Array): TimeValues {
  const minutes = unit.factor === 60;
  const turn = minutes ? HOUR : DAY;
  const values = Float64Array.from(records, (record) => {
    const text = sheet.records.cell(record, column.fields[0]!).trim();
    return (minutes ? (readMinutes(text) ?? readSpan(text)) : (readCivil(text, 'ymd')?.seconds ?? readSpan(text))) ?? Number.NaN;
  });
  if (countsOn(values, turn)) return { values, origin: null, problems: [], inferences: minutes ? [] : [beyondDay(column)] };
  const turns = unrolled(values, turn);
  const inferences = turns > 0 ? [turned(column, minutes, turns)] : [];
  const step = isOrdered(values) ? null : medianStep(values.filter((seconds) => !Number.isNaN(seconds)));
  const untold =
    step !== null && step > turn - nearTurn(turn) ? { untold: minutes ? ('a full hour' as const) : ('midnight' as const) } : {};
  return { values, origin: null, problems: [], inferences, ...untold };
}

/** A fall of at least this much between neighbouring clock times is a turn of the clock. */
function nearTurn(turn: number): number {
  return (turn * 23) / 24;
}

/**
 * Whether a clock goes on beyond a turn. A single cell beyond it is damaged, unless it ends the log and follows on the row before; so is a
 * stretch of them after which the clock goes on where it was.
 * @param clock - seconds; NaN where a cell cannot be read.
 */
function countsOn(clock: Float64Array, turn: number): boolean {
  let before = 0;
  let beyond = 0;
  let last = 0;
  for (const seconds of clock) {
    if (Number.isNaN(seconds)) continue;
    if (seconds >= turn) beyond++;
    else {
      if (beyond > 1 && last > turn && seconds < before) return true;
      beyond = 0;
      before = seconds;
    }
    last = seconds;
  }
  return last > turn && (beyond > 1 || last - before < turn - nearTurn(turn));
}

/** Adds a turn at each fall of nearly one, in place; what lies beyond a turn becomes NaN. `24:00:00` is the midnight that ends a day, and `60:00` ends an hour. Returns the turns. */
function unrolled(clock: Float64Array, turn: number): number {
  const near = nearTurn(turn);
  let previous = Number.NaN;
  let ahead = 0;
  let turns = 0;
  for (let k = 0; k < clock.length; k++) {
    let seconds = clock[k]! > turn ? Number.NaN : clock[k]!;
    // At the end of what went before a turn stands for itself, elsewhere for the nought that it begins.
    if (seconds === turn && !(turn - previous < near)) seconds = 0;
    if (previous - seconds >= near) {
      ahead++;
      turns++;
    } else if (seconds - previous >= near && ahead > 0) ahead--;
    clock[k] = seconds + ahead * turn;
    if (!Number.isNaN(seconds)) previous = seconds;
  }
  return turns;
}

function turned({ name }: TimeColumn, minutes: boolean, turns: number): Inference {
  const often = turns === 1 ? 'once' : `${turns} times`;
  if (minutes)
    return {
      method: 'full-hour',
      statement: `The minutes in \`${name}\` begin again at nought ${often}; an hour was added each time.`,
    };
  return { method: 'midnight', statement: `The clock in \`${name}\` passes midnight ${often}; a day was added.` };
}

function beyondDay({ name }: TimeColumn): Inference {
  return { method: 'beyond-a-day', statement: `The hours of \`${name}\` count on beyond 24: they are elapsed time.` };
}

function readDates(
  sheet: Sheet,
  column: TimeColumn,
  reading: TimeReading,
  records: Int32Array,
  declaration: Pick<LogDeclaration, 'time' | 'place'>,
): TimeValues {
  const zone = declaration.time?.zone;
  const reader = zone === undefined ? null : zoneReader(zone);
  if (zone !== undefined && !reader)
    return { values: new Float64Array(0), origin: null, problems: [unknownZone(zone, declaration)], inferences: [] };
  const values = new Float64Array(records.length).fill(Number.NaN);
  let withOffset = 0;
  let read = 0;
  let origin = Number.NaN;
  let previous = Number.NEGATIVE_INFINITY;
  const stamp = new Float64Array(3);
  const quick = column.fields.length === 1 && reading.order === 'ymd';
  for (let k = 0; k < records.length; k++) {
    const found =
      (quick && sheet.records.stamp(records[k]!, column.fields[0]!, stamp)) || civilOf(sheet, column, reading, records[k]!, stamp);
    if (!found) continue;
    const [day, seconds, offset] = [stamp[0]!, stamp[1]!, stamp[2]!];
    read++;
    if (!Number.isNaN(offset)) withOffset++;
    if (Number.isNaN(origin)) origin = day * DAY;
    const instant = instantOf(day * DAY, seconds, offset, origin, reader, previous);
    values[k] = instant;
    if (!Number.isNaN(instant)) previous = instant;
  }
  const known = read > 0 && (withOffset === read || reader !== null);
  return {
    values,
    origin: known ? origin : null,
    problems: mixedOffsets(withOffset, read, reader, column, declaration),
    inferences: contradiction(sheet, column, records),
  };
}

/** `+01:00Z` states two offsets at once. */
function contradiction(sheet: Sheet, column: TimeColumn, records: Int32Array): Inference[] {
  const text = sheet.records.cell(records[0]!, column.fields.at(-1)!).trim();
  if (!/[+-]\d{2}(?::?\d{2})?Z$/.test(text)) return [];
  const statement = `\`${column.name}\` ends in an offset and in Z, which contradict each other: neither is used, the instant of the log is not known.`;
  return [{ method: 'zone-contradiction', statement }];
}

/** Puts day, second of the day and offset into `into`, with NaN for no offset; false where a cell cannot be read. */
function civilOf(sheet: Sheet, column: TimeColumn, reading: TimeReading, record: number, into: Float64Array): boolean {
  const part = (k: number) => sheet.records.cell(record, column.fields[k]!).trim();
  const text = column.fields.length === 1 ? part(0) : `${part(0)} ${part(1)}`;
  const civil = readCivil(text, reading.order);
  if (!civil || Number.isNaN(civil.day) || (column.shape !== 'date' && Number.isNaN(civil.seconds))) return false;
  into[0] = civil.day;
  into[1] = Number.isNaN(civil.seconds) ? 0 : civil.seconds;
  into[2] = civil.offset ?? Number.NaN;
  return true;
}

/** Seconds since `origin`, a midnight: so the fraction of a second keeps its digits. */
function instantOf(
  midnight: number,
  seconds: number,
  offset: number,
  origin: number,
  reader: ZoneReader | null,
  previous: number,
): number {
  if (!Number.isNaN(offset)) return midnight - origin + seconds - offset;
  if (!reader) return midnight - origin + seconds;
  const whole = Math.floor(seconds);
  return reader(midnight + whole, origin + previous - 1) - origin + (seconds - whole);
}

function unknownZone(zone: string, declaration: Pick<LogDeclaration, 'place'>): Problem {
  const near = nearest(zone, zoneNames());
  return error('zone-unknown', declaration.place, `the time zone \`${zone}\` is not in the IANA time zone database`, {
    expected: 'a name such as Europe/Vienna, an offset such as +01:00, or UTC',
    ...(near === undefined ? {} : { remedy: `did you mean \`${near}\`?` }),
  });
}

function mixedOffsets(
  withOffset: number,
  read: number,
  reader: ZoneReader | null,
  column: TimeColumn,
  declaration: Pick<LogDeclaration, 'place'>,
): Problem[] {
  if (withOffset === 0 || withOffset === read || reader) return [];
  return [
    error(
      'zone-mixed',
      declaration.place,
      `${withOffset} of ${read} times in \`${column.name}\` state an offset from UTC, the others do not`,
      {
        expected: 'an offset in every row or in none',
        remedy: 'declare the `zone` of those without',
      },
    ),
  ];
}
