/** How the lines of an exported thermal image divide into numbers, and what tells that they are no temperatures in °C. */

/** Fewest columns and rows of an image. */
export const LEAST = 8;

const NUMBER = /^[+-]?(?:\d+[.,]?\d*|[.,]\d+)(?:[eE][+-]?\d+)?$/;

export function isNumber(cell: string): boolean {
  return NUMBER.test(cell);
}

const DIVIDERS = [';', '\t', ',', ' '] as const;

/** What divides most lines into numbers; of two that divide as many, a comma comes before the blanks behind it. */
export function dividerOf(lines: readonly string[]): (typeof DIVIDERS)[number] {
  const isRow = (cells: readonly string[]) => cells.length >= LEAST && cells.every(isNumber);
  const count = (divider: string) => lines.filter((line) => isRow(cellsOf(line, divider))).length;
  const [most] = DIVIDERS.map((divider) => ({ divider, rows: count(divider) })).sort((a, b) => b.rows - a.rows);
  return most && most.rows > 0 ? most.divider : ',';
}

/** Cells of a line. A comma within quotes is a decimal one. */
export function cellsOf(line: string, divider: string): string[] {
  const unquoted = line.replace(/"([^"]*)"/g, (whole, inner: string) => (isNumber(inner.trim()) ? inner.replace(',', '.') : whole));
  const trimmed = unquoted.trim().replace(/[;,]$/, '');
  if (trimmed === '') return [];
  return trimmed.split(divider === ' ' ? / +/ : divider).map((cell) => cell.trim());
}

/**
 * Whether commas seem to stand both between numbers and in them, so that each second cell holds decimals: neighbours in an image are alike, and
 * here the next but one is more alike than the next.
 */
export function sharesCommas(rows: readonly (readonly string[])[]): boolean {
  const width = rows[0]!.length;
  if (width % 2 !== 0 || !rows.every((row) => row.every((cell) => /^[+-]?\d+$/.test(cell)))) return false;
  if (rows.some((row) => row.some((cell, index) => index % 2 === 1 && /^0\d/.test(cell)))) return true;
  const apart = (by: number) => {
    let sum = 0;
    for (const row of rows)
      for (let index = 0; index + 2 < width; index += 1) sum += Math.abs(Number(row[index]) - Number(row[index + by]));
    return sum;
  };
  return apart(1) > 1.3 * apart(2);
}

/** Whether cells are 0, 1, 2 … or 1, 2, 3 …: numbers of columns or rows. */
export function counts(cells: readonly string[]): boolean {
  const start = Number(cells[0]);
  return (start === 0 || start === 1) && cells.every((cell, index) => Number(cell) === start + index);
}

/** A unit alone: in brackets, in a cell, or behind `in` or `unit`. One that follows a number is that number's own. */
const UNIT =
  /(?:(?<!\d"?\s*)[:=;,\t]|[([]|\b(?:in|units?)\b|^)\s*"?(K|kelvins?|(?:°|deg(?:rees)?)?\s?F|(?:degrees\s)?fahrenheit)"?\s*(?:[)\];,\t]|$)/i;

/** A unit of temperature other than °C that a line names; null where it names none. */
export function unitNamed(line: string): string | null {
  const unit = UNIT.exec(line.trim())?.[1] ?? null;
  // Small letters stand for other things.
  return unit === 'k' || unit === 'f' ? null : unit;
}
