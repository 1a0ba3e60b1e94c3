/** The header of a small table: a name, and a unit in brackets behind it. */
import { bracketText, headerUnit } from './header-units.ts';

/** A column's name without the unit in brackets behind it, in the spelling of ours. */
export function headName(head: string): string {
  return withoutBrackets(head)
    .toLowerCase()
    .replaceAll(/[\s-]+/g, '_');
}

/** A column's own words, without what stands in brackets behind them. */
export function withoutBrackets(head: string): string {
  return head.replace(/\s*[([][^()[\]]*[)\]]\s*$/, '').trim();
}

/** The physical unit in brackets behind a column's name; undefined where none stands there. */
export function headUnit(head: string): string | undefined {
  return headerUnit(head, undefined, () => false)?.spelling;
}

/** The same for scores, whose units may be any word. */
export function scoreUnit(head: string): string | undefined {
  return bracketText(head);
}
