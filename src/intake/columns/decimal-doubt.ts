/** Two decimal marks in one log: then the mark of one of them parts thousands, and which one it is must not be guessed. */
import { error, type Problem } from '../../problem.ts';
import { type DecimalMark, isGrouped, parseNumber } from '../cells/numbers.ts';
import type { ChannelDeclaration } from '../log.ts';
import type { Sheet } from '../sheet/open.ts';
import { sampleCells } from '../time/time-column.ts';

const EXPECTED = 'one decimal mark in the whole log, and no mark between thousands';
const REMEDY =
  'have the logger write numbers without a mark between thousands, or keep a copy without them beside the original and name that';

/** The error of a column that is written with the other decimal mark, or whose numbers could be grouped thousands while another column is; null for any other. */
export function decimalDoubt(sheet: Sheet, channel: ChannelDeclaration, field: number): Problem | null {
  const mark = sheet.dialect.decimal;
  const other: DecimalMark = mark === '.' ? ',' : '.';
  const marked = sampleCells(sheet, field).filter((cell) => cell.includes(mark) || cell.includes(other));
  const [cell] = marked;
  if (cell === undefined) return null;
  const wrong = isWith(other, mark, marked);
  if (!wrong && !marked.every((each) => isGrouped(each, other))) return null;
  const fields = sheet.keys.map((_, at) => at).filter((at) => at !== field);
  const beside = fields.find((at) => isWith(wrong ? mark : other, wrong ? other : mark, sampleCells(sheet, at)));
  if (beside === undefined) return null;
  const [against = ''] = sampleCells(sheet, beside);
  const found = `\`${sheet.keys[field]}\` of the channel ${channel.name} holds \`${cell}\`, and \`${sheet.keys[beside]}\` holds \`${against}\`: not both marks can be the decimal mark`;
  return error('decimal-marks-differ', channel.place, found, { expected: EXPECTED, remedy: REMEDY });
}

/**
 * The error of a column that may count on from `990` to `1,000`: hundreds without a mark, and marked numbers that all have three digits behind the mark and
 * never nought before it; null for any other. A logger that leaves noughts out at the end writes `1,25` too. One bare hundred is enough: it may be a cell that
 * lost its head, or a true one, and to take the one for the other is to be off by a thousand.
 */
export function groupedDoubt(sheet: Sheet, declaration: ChannelDeclaration, field: number, kept: Int32Array): Problem | null {
  const { records, dialect, keys } = sheet;
  const { name, place, missing = [] } = declaration;
  const values = new Float64Array(kept.length);
  records.numbers(kept, field, dialect.decimal, 0, values);
  if (values.some((value) => Math.abs(value) > 0 && Math.abs(value) < 1)) return null;
  const spellings = new Set<string>();
  // Whole numbers are few where most are written with three decimals.
  for (let row = 0; row < kept.length; row++) {
    if (!Number.isInteger(values[row]) || values[row] === 0) continue;
    const cell = records.cell(kept[row]!, field).trim();
    if (!HUNDREDS.test(cell) || missing.includes(cell)) continue;
    spellings.add(cell);
  }
  const [bare] = spellings;
  if (bare === undefined) return null;
  const other: DecimalMark = dialect.decimal === '.' ? ',' : '.';
  let grouped = '';
  for (let row = 0; row < kept.length; row++) {
    if (Number.isNaN(values[row]) || values[row] === 0) continue;
    const cell = records.cell(kept[row]!, field).trim();
    if (missing.includes(cell)) continue;
    if (BARE.test(cell)) continue;
    if (!isGrouped(cell, other) || !/^[+\u2212-]?[1-9]/.test(cell)) return null;
    if (grouped === '') grouped = cell;
  }
  if (grouped === '') return null;
  const noReading = spellings.size === 1 ? `; where \`${bare}\` is no reading, name it under \`missing\` of the channel` : '';
  const found = `\`${keys[field]}\` of the channel ${name} holds \`${bare}\` and \`${grouped}\`: the mark can part thousands or be the decimal mark`;
  return error('decimal-marks-differ', place, found, { expected: EXPECTED, remedy: `${REMEDY}${noReading}` });
}

/** A whole number that needs no mark between thousands. */
const BARE = /^[+\u2212-]?\d{1,3}$/;
/** What a column passes through on its way to thousands. */
const HUNDREDS = /^[+\u2212-]?\d{3}$/;

/** Most cells are numbers with this mark alone, and they differ: a version such as 1.5 stays the same. */
function isWith(mark: DecimalMark, other: DecimalMark, cells: readonly string[]): boolean {
  const only = (cell: string) => !Number.isNaN(parseNumber(cell, mark)) && Number.isNaN(parseNumber(cell, other));
  const fitting = cells.filter((cell) => only(cell) && !isGrouped(cell, other));
  return fitting.length * 2 > cells.length && new Set(fitting).size > 1;
}
