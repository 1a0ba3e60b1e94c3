/** Units that stand in the cells: what most cells end with, and cells of a meter that changed its range, 980 mA and then 1.02 A. */
import { suffixedNumber } from '../cells/cells.ts';
import { columnUnit, unitSpelling } from '../cells/header-units.ts';
import { type DecimalMark, decimalsOf } from '../cells/numbers.ts';

/** What follows the number in most of the filled cells, or the most frequent of what does; undefined where most are bare numbers. */
export function usualSuffix(filled: readonly string[], mark: DecimalMark): string | undefined {
  const counts = new Map<string, number>();
  let suffixed = 0;
  for (const cell of filled) {
    const found = suffixedNumber(cell, mark);
    if (!found) continue;
    suffixed++;
    counts.set(found.suffix, (counts.get(found.suffix) ?? 0) + 1);
  }
  if (suffixed * 2 <= filled.length) return undefined;
  const most = Math.max(...counts.values());
  return [...counts].find(([, count]) => count === most)?.[0];
}

export interface CellNumber {
  /** The number in the usual unit, as text. */
  readonly text: string;
  /** Decimals in the usual unit; negative for whole tens and more. */
  readonly decimals: number;
  /** The unit of this very cell, where it is another. */
  readonly other?: string;
}

/** The number of a cell that ends in the usual unit, or in one a power of ten away from it; null for anything else. */
export function numberInUnit(cell: string, suffix: string, mark: DecimalMark): CellNumber | null {
  const found = suffixedNumber(cell, mark);
  if (!found) return null;
  const text = cell.trim().slice(0, -found.suffix.length).trim();
  const written = decimalsOf(text, mark);
  if (found.suffix === suffix) return { text, decimals: written };
  const [own, usual] = [found.suffix, suffix].map((spelling) => columnUnit(unitSpelling(spelling) ?? ''));
  if (own?.decimal === undefined || usual?.decimal === undefined) return null;
  if (own.canonical !== usual.canonical || own.offset !== usual.offset || /e/i.test(text)) return null;
  const power = own.decimal - usual.decimal;
  return { text: `${text}e${power}`, decimals: written - power, other: found.suffix };
}
