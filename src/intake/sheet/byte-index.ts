/** The index of cells for a file whose bytes are its text: cells become numbers without becoming strings. */
import { decimalsOf, POWERS, parseNumber } from '../cells/numbers.ts';
import { stampReader } from './byte-stamp.ts';
import type { ByteText } from './byte-text.ts';
import { cellStarts } from './cell-starts.ts';
import type { Cells } from './records.ts';

const LF = 10;

/**
 * Indexes every cell of a text without quotes in one pass over its bytes. Its cells, numbers and decimals are those of `indexCells`, to the last bit.
 * @param text - with LF at the ends of lines.
 * @param count - number of lines, each of which is a record.
 * @param delimiter - one letter.
 */
export function indexBytes(text: ByteText, count: number, delimiter: string): Cells {
  const { bytes, cut } = text;
  const mark = delimiter.charCodeAt(0);
  const letters = { length: bytes.length, at: (offset: number) => bytes[offset]! };
  const { starts, first } = cellStarts(letters, count, mark, guessed(bytes, mark));
  const stamp = stampReader(bytes);
  const end = (at: number) => starts[at + 1]! - 1;
  const width = (record: number) => first[record + 1]! - first[record]!;
  const cell = (record: number, field: number) =>
    field < width(record) ? cut(starts[first[record]! + field]!, end(first[record]! + field)) : '';
  const numbers: Cells['numbers'] = (records, field, mark, shift, into) => {
    const markCode = mark.charCodeAt(0);
    let decimals = 0;
    for (let k = 0; k < records.length; k++) {
      const record = records[k]!;
      const at = first[record]! + field;
      // What follows a short record is the next one.
      if (at >= first[record + 1]!) {
        into[k] = Number.NaN;
        continue;
      }
      const [from, to] = [starts[at]!, starts[at + 1]! - 1];
      const quick =
        to - from < SMALL ? smallNumber(bytes, markCode, shift, from, to) : quickNumber(bytes, markCode, shift, from, to);
      if (Number.isNaN(quick)) {
        const cell = cut(from, to);
        const value = parseNumber(cell, mark, shift);
        into[k] = value;
        if (!Number.isNaN(value)) decimals = Math.max(decimals, decimalsOf(cell, mark));
      } else {
        into[k] = quick;
        let point = to - 1;
        while (point >= from && bytes[point]! >= 48 && bytes[point]! <= 57) point--;
        if (point >= from && bytes[point] === markCode && to - 1 - point > decimals) decimals = to - 1 - point;
      }
    }
    return decimals;
  };
  return {
    count,
    width,
    cell,
    row: (record) => Array.from({ length: width(record) }, (_, field) => cell(record, field)),
    letter: (record) => {
      let at = starts[first[record]!]!;
      while (bytes[at] === 32 || bytes[at] === 9) at++;
      return bytes[at] ?? LF;
    },
    numbers,
    stamp: (record, field, into) => {
      const at = first[record]! + field;
      return at < first[record + 1]! && stamp(starts[at]!, starts[at + 1]! - 1, into);
    },
  };
}

/** Letters of a cell whose digits fit into 31 bits. */
const SMALL = 10;

/** As `quickNumber`, of fewer than ten letters: whole numbers of the processor's own are some times as quick as doubles. */
function smallNumber(bytes: Uint8Array, mark: number, shift: number, from: number, to: number): number {
  const sign = bytes[from]!;
  const start = sign === 45 || sign === 43 ? from + 1 : from;
  let mantissa = 0;
  let point = -1;
  for (let at = start; at < to; at++) {
    const byte = bytes[at]!;
    const digit = byte - 48;
    if (digit >= 0 && digit <= 9) mantissa = (mantissa * 10 + digit) | 0;
    else if (byte === mark && point < 0) point = at;
    else return Number.NaN;
  }
  return scaled(mantissa, sign, point, to, to - start, shift);
}

/** What `parseNumber` takes without a look at the text, `[+-]digits[mark digits]` of at most 15 digits without blanks; NaN for anything else. */
function quickNumber(bytes: Uint8Array, mark: number, shift: number, from: number, to: number): number {
  const sign = bytes[from]!;
  let mantissa = 0;
  let point = -1;
  const start = sign === 45 || sign === 43 ? from + 1 : from;
  for (let at = start; at < to; at++) {
    const digit = bytes[at]! - 48;
    if (digit >= 0 && digit <= 9) mantissa = mantissa * 10 + digit;
    else if (digit + 48 === mark && point < 0) point = at;
    else return Number.NaN;
  }
  return scaled(mantissa, sign, point, to, to - start, shift);
}

/** @param point - where the decimal mark stands; -1 for none. */
function scaled(mantissa: number, sign: number, point: number, to: number, letters: number, shift: number): number {
  const decimals = point < 0 ? 0 : to - 1 - point;
  const digits = letters - (point < 0 ? 0 : 1);
  const power = shift - decimals;
  if (digits < 1 || digits > 15 || (point >= 0 && decimals === 0) || power < -22 || power > 22) return Number.NaN;
  const value = power < 0 ? mantissa / POWERS[-power]! : mantissa * POWERS[power]!;
  return sign === 45 ? -value : value;
}

/** How many cells there may be, by the first bytes of the file: memory that is asked for and not used costs nothing, memory that is moved does. */
function guessed(bytes: Uint8Array, delimiter: number): number {
  const head = bytes.subarray(0, 2 ** 16);
  let cells = 1;
  for (const byte of head) if (byte === delimiter || byte === LF) cells++;
  return Math.ceil((cells / Math.max(1, head.length)) * bytes.length * 1.25);
}
