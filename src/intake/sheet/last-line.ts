/** Whether the last line of a file, with no line end after it, may have been cut in the middle of its last cell. */
import type { Sheet } from './open.ts';
import { splitLine } from './split.ts';

/** Fewer other numbers do not show how those of a column end. */
const FEWEST_NUMBERS = 3;

/** What is said of a line that may be cut. */
export const LAST_CELL_CUT = 'no line end follows the last line, so its last cell may be cut off';

/**
 * True where a file ends in this record without a line end, and the record does not end as the file's other rows do. A quote that
 * closes, a unit behind all numbers, as many decimals as all have or as many digits, a word that other rows end with: a cut cell would lack that.
 *
 * @param rows - the file's other rows, as indices of records.
 */
export function mayBeCut(record: number, rows: ArrayLike<number>, sheet: Sheet): boolean {
  if (!sheet.openEnd || record !== sheet.records.count - 1) return false;
  const last = lastCell(record, sheet);
  const others = Array.from(rows, (row) => lastCell(row, sheet));
  if (isNumber(last)) return !endsLikeNumbers(last, others.filter(isNumber));
  if (/^"[^"]*"$/.test(last)) return others.some((cell) => cell.slice(1, -1).includes('"'));
  return !others.includes(last) || others.some((cell) => cell !== last && cell.startsWith(last));
}

/**
 * True where a table ends in this record without a line end, and its last number lacks what all others end with. A table is written whole,
 * by hand or by a program, and many an editor ends no line: so that there is no line end is no evidence, unlike in a log.
 *
 * @param rows - the table's other rows, as indices of records.
 */
export function looksCut(record: number, rows: ArrayLike<number>, sheet: Sheet): boolean {
  if (!sheet.openEnd || record !== sheet.records.count - 1) return false;
  const last = shapeBehindInteger(lastCell(record, sheet));
  const others = Array.from(rows, (row) => lastCell(row, sheet));
  const [shape = ''] = others.map(shapeBehindInteger);
  const alike = others.every((cell) => isNumber(cell) && shapeBehindInteger(cell) === shape);
  return others.length >= FEWEST_NUMBERS && alike && isNumber(lastCell(record, sheet)) && last !== shape && shape.startsWith(last);
}

/** The last cell as it stands in the file, with its quotes. */
function lastCell(record: number, { records, lines, dialect }: Sheet): string {
  const line = lines.at(records.lines[record]!);
  const cell = splitLine(line, dialect.delimiter).cells.at(-1);
  return cell ? line.slice(cell.from, cell.to) : '';
}

function isNumber(cell: string): boolean {
  return /^[-+]?[.,]?\d/.test(cell);
}

function endsLikeNumbers(last: string, others: readonly string[]): boolean {
  if (others.length < FEWEST_NUMBERS) return false;
  const unit = /\D+$/.exec(last)?.[0];
  if (unit !== undefined) return others.every((cell) => /\D+$/.exec(cell)?.[0] === unit);
  const behind = shapeBehindInteger(last);
  const shape = behind === '' ? shapeOf : shapeBehindInteger;
  return others.every((cell) => shape(cell) === shape(last));
}

/** ".00" of "71.25"; '' of an integer. */
function shapeBehindInteger(cell: string): string {
  return shapeOf(cell.replace(/^[-+]?\d+/, ''));
}

/** A number with each digit as 0. */
function shapeOf(cell: string): string {
  return cell.replace(/\d/g, '0');
}
