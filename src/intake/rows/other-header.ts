/** A second header that names the columns otherwise than the first: what follows it would be read under the wrong names. */
import { error, type Problem } from '../../problem.ts';
import { cellKind, isTyped } from '../cells/cells.ts';
import { withoutBrackets } from '../cells/heads.ts';
import { placeOfLine } from '../sheet/lines.ts';
import type { Sheet } from '../sheet/open.ts';

/** Whether a record among the rows holds names, half of them or more also names of the header, and not all in their places. */
export function isOtherHeader(record: number, { records, structure, dialect }: Sheet): boolean {
  if (structure.header === null) return false;
  const cells = records.row(record).map((cell) => cell.trim());
  const filled = cells.filter((cell) => cell !== '');
  const known = new Set(structure.header.filter((name) => name !== '').map(bare));
  // `12V` looks like a reading with its unit, but not where the header has it.
  const isName = (cell: string) =>
    cellKind(cell, dialect.decimal) === 'text' || (known.has(bare(cell)) && !isTyped(cell, dialect.decimal));
  if (filled.length < 2 || !filled.every(isName)) return false;
  return filled.filter((cell) => known.has(bare(cell))).length * 2 >= filled.length;
}

function bare(name: string): string {
  return withoutBrackets(name).toLowerCase();
}

/** The error at such a record. */
export function headerChanged({ file, lines, records, structure }: Sheet, record: number): Problem {
  const line = records.lines[record]!;
  const place = placeOfLine(file, lines, line);
  const found = `this line names the columns otherwise than the header on line ${records.lines[structure.headerAt]}`;
  return error('header-changed', place, found, {
    expected: 'one header, or the same again',
    remedy: `keep a copy of each part as a log of its own; to read the first part alone, write \`drop: ${line} .. ${lines.count}\` and a \`reason\` under \`repairs\``,
  });
}
