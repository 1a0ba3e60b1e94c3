/** The lines of a cell in a table of runs side by side: on the site's pages and where the browser makes such a table alike. */

import type { ComparedCell, ComparedFigure } from '../../compute/results.ts';
import { TOLD_APART } from '../../figures/comparison/verdict-words.ts';

/** What a reader needs to know of all such tables, once above them. */
export const TABLES_SAY =
  'Settings are told apart only where it is known how runs of one setting lie apart; then what lies between them is heavy. Where each setting was run once and no repeats are known, the words are about these two runs: whether they differ, not whether the settings do. Each figure is judged for all settings together, and for all tests together (Holm). What follows ± and what stands in brackets are 95 % intervals. What two runs share, such as the error of one instrument, cancels in what lies between them.';

export interface CellLine {
  readonly text: string;
  /** A figure, what is said of it, or that there is none: the class of its element. */
  readonly kind: 'line' | 'detail' | 'absent';
  /** What lies between two settings that are told apart. */
  readonly heavy: boolean;
  /** Words that are too long for a line that is not broken. */
  readonly long: boolean;
}

/** Characters of a line that is not broken. */
const LONGEST = 36;

/** The figure, then what lies between it and the reference's; below each what is said of it. One line where there is none. */
export function cellLines({ figure, against }: ComparedCell): CellLine[] {
  if (figure === null) return [lineOf('–', 'line')];
  if (figure.absent !== undefined) return [lineOf('absent', 'absent')];
  const between = against === null || against.absent !== undefined ? [] : figureLines(against);
  return [...figureLines(figure), ...between];
}

function figureLines({ shown, verdict, detail }: ComparedFigure): CellLine[] {
  const said = [verdict === TOLD_APART ? '' : verdict, detail].filter((text) => text !== '');
  return [{ ...lineOf(shown, 'line'), heavy: verdict === TOLD_APART }, ...said.map((text) => lineOf(text, 'detail'))];
}

function lineOf(text: string, kind: CellLine['kind']): CellLine {
  return { text, kind, heavy: false, long: text.length > LONGEST };
}
