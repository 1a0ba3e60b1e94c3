/** An index of where the cells of a text without quotes begin, so that only those that are wanted are cut out or converted. */
import { decimalsOf, parseNumber } from '../cells/numbers.ts';
import { cellStarts } from './cell-starts.ts';
import type { Cells } from './records.ts';

/**
 * Indexes every cell in one pass over the text.
 * @param count - number of lines, each of which is a record.
 * @param delimiter - one UTF-16 unit.
 */
export function indexCells(text: string, count: number, delimiter: string): Cells {
  const letters = { length: text.length, at: (offset: number) => text.charCodeAt(offset) };
  const { starts, first } = cellStarts(letters, count, delimiter.charCodeAt(0), count * 8);
  // A cell ends one unit before the next begins: at the delimiter or line end between them.
  const end = (at: number) => starts[at + 1]! - 1;
  const width = (record: number) => first[record + 1]! - first[record]!;
  const cell = (record: number, field: number) =>
    field < width(record) ? text.slice(starts[first[record]! + field]!, end(first[record]! + field)) : '';
  return {
    count,
    width,
    cell,
    row: (record) => Array.from({ length: width(record) }, (_, field) => cell(record, field)),
    letter: (record) => letterOf(text, starts[first[record]!]!),
    numbers: (records, field, mark, shift, into) => {
      let decimals = 0;
      for (let k = 0; k < records.length; k++) {
        const at = first[records[k]!]! + field;
        // What follows a short record is the next one.
        const within = at < first[records[k]! + 1]!;
        into[k] = within ? parseNumber(text, mark, shift, starts[at]!, end(at)) : Number.NaN;
        if (!Number.isNaN(into[k])) decimals = Math.max(decimals, decimalsOf(text, mark, starts[at]!, end(at)));
      }
      return decimals;
    },
    stamp: () => false,
  };
}

/** The letter that a line begins with, blanks left out; that of its end where there is none. */
function letterOf(text: string, from: number): number {
  let at = from;
  while (text[at] === ' ' || text[at] === '\t') at++;
  return at < text.length ? text.charCodeAt(at) : LF;
}

const LF = 10;
