/** Two decimal marks in one log: then the mark of one of them parts thousands, and which one it is must not be guessed. */
import { error, type Problem } from '../../problem.ts';
import { type DecimalMark, isGrouped, parseNumber } from '../cells/numbers.ts';
import type { ChannelDeclaration } from '../log.ts';
import type { Sheet } from '../sheet/open.ts';
import { sampleCells } from '../time/time-column.ts';

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
  return error('decimal-marks-differ', channel.place, found, {
    expected: 'one decimal mark in the whole log, and no mark between thousands',
    remedy:
      'have the logger write numbers without a mark between thousands, or keep a copy without them beside the original and name that',
  });
}

/** Most cells are numbers with this mark alone, and they differ: a version such as 1.5 stays the same. */
function isWith(mark: DecimalMark, other: DecimalMark, cells: readonly string[]): boolean {
  const only = (cell: string) => !Number.isNaN(parseNumber(cell, mark)) && Number.isNaN(parseNumber(cell, other));
  const fitting = cells.filter((cell) => only(cell) && !isGrouped(cell, other));
  return fitting.length * 2 > cells.length && new Set(fitting).size > 1;
}
