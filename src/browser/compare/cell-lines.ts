/** What stands below a value in a table of runs side by side: on the site's pages and where the browser makes such a table alike. */
import type { ComparedCell, ComparedTable, ShownFigure } from '../../compute/results.ts';

export interface CellLine {
  readonly text: string;
  /** Too long for a line that is not broken. */
  readonly long: boolean;
}

/** Characters of a line that is not broken. */
const LONGEST = 36;

/** Uncertainty and verdict of a cell's figure, then what lies between it and the reference's. */
export function cellLines({ figure, against }: ComparedCell, { name }: Pick<ComparedTable, 'name'>): CellLine[] {
  const lines = [
    ...(figure && !figure.absent ? said(figure) : []),
    ...(against && !against.absent ? [`${name === '' ? 'difference' : 'speedup'} ${against.shown}`, ...said(against)] : []),
  ];
  return lines.filter((text) => text !== '').map((text) => ({ text, long: text.length > LONGEST }));
}

function said({ uncertainty, detail }: ShownFigure): string[] {
  return [uncertainty, detail];
}
