/** Dates with a clock time as bytes, `2026-03-14 09:00:00`, in the one form that most logs write: read without becoming strings. */
import { daysFromCivil, daysIn } from '../cells/civil.ts';

/** Day, second of the day and offset from UTC, which is NaN where none is written. */
export type Stamp = Float64Array;

/** A reader that puts the parts of one date into `into`, as `readCivil` reads them; false for any other form, which that reads. */
export function stampReader(bytes: Uint8Array): (from: number, to: number, into: Stamp) => boolean {
  // Rows of a log are of one day, or of a few.
  let [lastDate, lastDay] = [-1, Number.NaN];
  return (from, to, into) => {
    const letter = bytes[from + 10];
    if (to - from < 19 || bytes[from + 4] !== DASH || bytes[from + 7] !== DASH || (letter !== BLANK && letter !== T)) return false;
    if (bytes[from + 13] !== COLON || bytes[from + 16] !== COLON) return false;
    const date = (two(bytes, from) * 100 + two(bytes, from + 2)) * 10_000 + two(bytes, from + 5) * 100 + two(bytes, from + 8);
    if (date !== lastDate) {
      const [year, month, day] = [Math.floor(date / 10_000), Math.floor(date / 100) % 100, date % 100];
      if (!(year >= 1000 && month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month))) return false;
      [lastDate, lastDay] = [date, daysFromCivil(year, month, day)];
    }
    const [hour, minute, second] = [two(bytes, from + 11), two(bytes, from + 14), two(bytes, from + 17)];
    if (!(hour < 24 && minute < 60 && second < 60)) return false;
    const fraction = fractionEnd(bytes, from + 19, to);
    const offset = offsetIn(bytes, fraction, to);
    if (fraction < 0 || offset === null) return false;
    into[0] = lastDay;
    into[1] = hour * 3600 + minute * 60 + second + fractionOf(bytes, from + 20, fraction);
    into[2] = offset;
    return true;
  };
}

const [BLANK, PLUS, COMMA, DASH, POINT, COLON, T, Z] = [32, 43, 44, 45, 46, 58, 84, 90];

/** NaN where one of them is no digit. */
function two(bytes: Uint8Array, at: number): number {
  const [tens, ones] = [bytes[at]! - 48, bytes[at + 1]! - 48];
  return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? tens * 10 + ones : Number.NaN;
}

/** Where a fraction of a second ends; where it would begin where there is none; -1 for a wrong one. */
function fractionEnd(bytes: Uint8Array, from: number, to: number): number {
  if (from >= to || (bytes[from] !== POINT && bytes[from] !== COMMA)) return from;
  let at = from + 1;
  while (at < to && bytes[at]! >= 48 && bytes[at]! <= 57) at++;
  const digits = at - from - 1;
  return digits >= 1 && digits <= 9 ? at : -1;
}

function fractionOf(bytes: Uint8Array, from: number, to: number): number {
  let [part, weight] = [0, 1];
  for (let at = from; at < to; at++) {
    part = part * 10 + bytes[at]! - 48;
    weight *= 10;
  }
  return part / weight;
}

/** Seconds of `Z` or `+01:00`; NaN where nothing is left, null for anything else. */
function offsetIn(bytes: Uint8Array, from: number, to: number): number | null {
  if (from === to) return Number.NaN;
  if (to - from === 1 && bytes[from] === Z) return 0;
  const sign = bytes[from];
  if (to - from !== 6 || (sign !== PLUS && sign !== DASH) || bytes[from + 3] !== COLON) return null;
  const seconds = two(bytes, from + 1) * 3600 + two(bytes, from + 4) * 60;
  if (!(seconds <= 18 * 3600)) return null;
  return sign === DASH ? -seconds : seconds;
}
