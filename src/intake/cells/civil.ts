/** Civil dates and clock times as text: ISO 8601, its usual relaxations, and dates that begin with day or month. */

/** In which order a numeric date is written. */
export type DateOrder = 'ymd' | 'dmy' | 'mdy';

export interface Civil {
  /** Days since 1970-01-01 in the proleptic Gregorian calendar; NaN where the text has no date. */
  readonly day: number;
  /** Seconds since midnight; NaN where the text has no clock time. */
  readonly seconds: number;
  /** Offset from UTC in seconds; null where none is written or what is written contradicts itself. */
  readonly offset: number | null;
}

const DATE = String.raw`(\d{1,4})([-/.])(\d{1,2})\2(\d{1,4})`;
// Without seconds the minutes have two digits: `16:9` is no clock time, `9:5:3` is one.
const CLOCK = String.raw`(\d{1,3}):(?=\d{2}(?!\d)|\d:)(\d{1,2})(?::(\d{1,2})(?:[.,](\d{1,9}))?)?(?:\s*([AaPp][Mm]))?`;
const ZONE = String.raw`\s*((?:[+-]\d{2}(?::?\d{2})?)?Z?|UTC|GMT|[A-Z]{3,5})`;
const CIVIL = new RegExp(`^(?:${DATE})?(?:(^|[T ]\\s*)${CLOCK}${ZONE})?$`);

/** True for text in the shape of a date, a clock time, or both. */
export function isCivil(text: string): boolean {
  return text !== '' && (CIVIL.test(inDigits(text)) || isMinutes(text));
}

const MINUTES = /^(\d{1,4}):([0-5]\d)[.,](\d{1,9})$/;
const SPAN = /^(\d{1,3}):([0-5]?\d):([0-5]?\d)(?:[.,](\d{1,9}))?$/;
const PAIR = /^(\d{1,4}):([0-5]\d)$/;

/** Minutes and seconds: a fraction behind the second number, as in `61:05.25`, proves that it counts seconds. */
export function isMinutes(text: string): boolean {
  return MINUTES.test(text);
}

/** Two numbers without a fraction, `10:30`: hours and minutes, or minutes and seconds. */
export function isPair(text: string): boolean {
  return PAIR.test(text);
}

/** Seconds of minutes and seconds, `61:05.25` or `61:05`; null for anything else. */
export function readMinutes(text: string): number | null {
  const match = MINUTES.exec(text) ?? PAIR.exec(text);
  return match && Number(match[1]) * 60 + Number(match[2]) + fraction(match[3]);
}

/** Seconds of hours and minutes, with or without seconds, that count on beyond a day, `31:05:00` or `31:05`; null for anything else. */
export function readSpan(text: string): number | null {
  const match = SPAN.exec(text) ?? PAIR.exec(text);
  return match && Number(match[1]) * 3600 + Number(match[2]) * 60 + Number(match[3] ?? 0) + fraction(match[4]);
}

/** The parts of a date, in the order written; null where the text has no date. */
export function dateParts(text: string): { readonly parts: readonly [number, number, number]; readonly mark: string } | null {
  const match = CIVIL.exec(inDigits(text));
  if (!match?.[1]) return null;
  return { parts: [Number(match[1]), Number(match[3]), Number(match[4])], mark: match[2]! };
}

/** Reads a trimmed text; null when it is not a date or time, or an impossible one (month 13, minute 99). */
export function readCivil(text: string, order: DateOrder): Civil | null {
  const quick = order === 'ymd' ? readUsual(text) : null;
  if (quick) return quick;
  const digits = inDigits(text);
  const match = text === '' ? null : CIVIL.exec(digits);
  if (!match) return null;
  // A month in words leaves no doubt about the order.
  if (digits !== text) return readCivil(digits, 'ymd');
  const day = match[1] === undefined ? Number.NaN : dayOf([Number(match[1]), Number(match[3]), Number(match[4])], order);
  const seconds = match[6] === undefined ? Number.NaN : clockSeconds(match[6], match[7]!, match[8], match[9], match[10]);
  if (day === null || seconds === null) return null;
  return { day, seconds, offset: readOffset(match[11] ?? '') };
}

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const WEEKDAY = '(?:[A-Z][a-z]{2,8},? +)?';
/** `Sat Mar 14 09:00:00 CET 2026`, the zone before or after the year or not at all. */
const MONTH_FIRST = new RegExp(
  `^${WEEKDAY}([A-Z][a-z]{2}) +(\\d{1,2}) +([\\d:.]+(?: [AP]M)?)(?: +([A-Z]{3,5}))? +(\\d{4})(?: +([A-Z]{3,5}))?$`,
);
/** `Sat 14 Mar 2026 09:00:00 AM CET`. */
const DAY_FIRST = new RegExp(`^${WEEKDAY}(\\d{1,2}) +([A-Z][a-z]{2}) +(\\d{4})(?: +([\\d:.]+(?: [AP]M)?)(?: +([A-Z]{3,5}))?)?$`);

/** A date with an English month in words as year-month-day; any other text as it is. */
export function inDigits(text: string): string {
  const first = text.charCodeAt(0);
  if (first >= 48 && first <= 57 ? !/^\d{1,2} [A-Z]/.test(text) : !/^[A-Z][a-z]{2}/.test(text)) return text;
  const a = MONTH_FIRST.exec(text);
  const b = a ? null : DAY_FIRST.exec(text);
  const [month, day, year] = a ? [a[1], a[2], a[5]] : b ? [b[2], b[1], b[3]] : [];
  const number = month === undefined ? -1 : MONTHS.indexOf(month.toLowerCase());
  if (number < 0) return text;
  const clock = a ? a[3] : b![4];
  const zone = a ? (a[4] ?? a[6]) : b![5];
  const date = `${year}-${String(number + 1).padStart(2, '0')}-${day!.padStart(2, '0')}`;
  return [date, clock, zone].filter((part) => part !== undefined).join(' ');
}

/** `YYYY-MM-DD hh:mm:ss`, with T or blank and whatever fraction and zone follow: what most logs have, without a pattern match. */
function readUsual(text: string): Civil | null {
  if (text.length < 19 || text.charCodeAt(4) !== 45 || text.charCodeAt(7) !== 45) return null;
  if (text.charCodeAt(13) !== 58 || text.charCodeAt(16) !== 58) return null;
  const between = text.charCodeAt(10);
  if (between !== 84 && between !== 32) return null;
  const year = twoDigits(text, 0) * 100 + twoDigits(text, 2);
  const day = dayOf([year, twoDigits(text, 5), twoDigits(text, 8)], 'ymd');
  const hour = twoDigits(text, 11);
  const minute = twoDigits(text, 14);
  const second = twoDigits(text, 17);
  if (day === null || !(hour < 24 && minute < 60 && second < 60)) return null;
  const seconds = hour * 3600 + minute * 60 + second;
  let at = 19;
  let part = 0;
  const mark = text.charCodeAt(at);
  if (mark === 46 || mark === 44) {
    let weight = 1;
    for (at++; text.charCodeAt(at) >= 48 && text.charCodeAt(at) <= 57; at++) {
      part = part * 10 + text.charCodeAt(at) - 48;
      weight *= 10;
    }
    if (weight === 1 || weight > 1e9) return null;
    part /= weight;
  }
  const offset = at === text.length ? null : zoneOffset(text.slice(at));
  return offset === undefined ? null : { day, seconds: seconds + part, offset };
}

const ZONE_ONLY = new RegExp(`^${ZONE}$`);
/** Every row of a log ends in the same zone, or in two of them: remembering the last saves a pattern match a row. */
let lastZone = '';
let lastOffset: number | null | undefined;

/** Offset of the text after the seconds; undefined where it is no zone. */
function zoneOffset(text: string): number | null | undefined {
  if (text === lastZone) return lastOffset;
  const match = ZONE_ONLY.exec(text);
  lastZone = text;
  lastOffset = match ? readOffset(match[1] ?? '') : undefined;
  return lastOffset;
}

function twoDigits(text: string, at: number): number {
  const tens = text.charCodeAt(at) - 48;
  const ones = text.charCodeAt(at + 1) - 48;
  return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? tens * 10 + ones : Number.NaN;
}

function clockSeconds(
  hours: string,
  minutes: string,
  seconds: string | undefined,
  part: string | undefined,
  half: string | undefined,
): number | null {
  let hour = Number(hours);
  if (half !== undefined) {
    if (hour < 1 || hour > 12) return null;
    hour = (hour % 12) + (/p/i.test(half) ? 12 : 0);
  }
  if (hour > 23 || Number(minutes) > 59 || Number(seconds ?? 0) > 59) return null;
  return hour * 3600 + Number(minutes) * 60 + Number(seconds ?? 0) + fraction(part);
}

function fraction(digits: string | undefined): number {
  return digits === undefined ? 0 : Number(digits) / 10 ** digits.length;
}

/** `Z`, `UTC`, `GMT`, `+hh:mm`, `+hhmm`, `+hh` -> seconds; null for none, for an abbreviation, and for an offset followed by Z. */
export function readOffset(text: string): number | null {
  if (text === 'Z' || text === 'UTC' || text === 'GMT') return 0;
  const match = /^([+-])(\d{2}):?(\d{2})?$/.exec(text);
  if (!match) return null;
  const seconds = Number(match[2]) * 3600 + Number(match[3] ?? 0) * 60;
  return seconds > 18 * 3600 ? null : match[1] === '-' ? -seconds : seconds;
}

/** Days since 1970-01-01, or null for a date that does not exist. Two-digit years are refused: the century is not in the file. */
function dayOf(parts: readonly [number, number, number], order: DateOrder): number | null {
  const [a, b, c] = parts;
  const [year, month, day] = order === 'ymd' ? [a, b, c] : order === 'dmy' ? [c, b, a] : [c, a, b];
  if (!(year >= 1000 && month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month))) return null;
  return daysFromCivil(year, month, day);
}

/** Days of a month. */
export function daysIn(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

/** Day number of a date that exists (years from March, so that the leap day comes last; eras of 400 years). */
export function daysFromCivil(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146097 + dayOfEra - 719468;
}
