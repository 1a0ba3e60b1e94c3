/** What was recorded of a script stands in for a number that the data no longer gives. */
import type { Element } from 'hast';
import type { Place, Problem } from '../../problem.ts';
import type { LedgerEntry } from '../written.ts';
import { heldAnchor, type PageElement } from './page-node.ts';
import type { Writing } from './writing.ts';

/** A number of a published script as it was said. */
export type Recorded = Pick<LedgerEntry, 'kind' | 'text' | 'expression' | 'value' | 'unit' | 'u' | 'shown'>;

/** A number of a table as it was recorded, where the figure is absent by now; undefined where nothing of the kind was recorded. */
export function recordedCell(writing: Writing, expression: string, place: Place, why: string): Element | undefined {
  const found = writing.recorded.find((each) => each.kind === 'table' && each.expression === expression);
  return found && standIn(writing, found, place, why);
}

/**
 * The recorded number as a link, where all that is wrong is that a figure is absent; undefined where nothing of the kind was recorded.
 * The problems are set apart: they are a correction now, and an error again when the script is published anew. Elsewhere the number is
 * kept as one that is absent.
 */
export function recordedInstead(
  writing: Writing,
  { kind, text, expression }: Pick<Recorded, 'kind' | 'text' | 'expression'>,
  place: Place,
  problems: readonly Problem[],
): PageElement | undefined {
  if (problems.some(({ rule }) => rule !== 'absent-figure')) return undefined;
  const why = problems.map((problem) => problem.found).join('; ');
  const found = writing.recorded.find((each) => each.kind === kind && each.text === text);
  if (found === undefined) {
    if (problems.length > 0) writing.absent.push({ kind, line: place.line, column: place.column, expression, why });
    return undefined;
  }
  writing.unborne.push(...problems);
  return standIn(writing, found, place, why);
}

function standIn(writing: Writing, found: Recorded, { file, line, column }: Place, rests: string): Element {
  writing.drafts.push({ ...found, file, line, column, uncertainty: '', verdict: 'cannot be told', rests, held: [] });
  return heldAnchor(writing.drafts.length - 1, found.shown);
}
