/** A problem found within a short text (an expression, an attribute list), before the text's own place is known. */
import type { Place, Problem } from '../../problem.ts';
import { error } from '../../problem.ts';
import type { RuleId } from '../rules/rules.ts';
import type { Span } from './expression-tree.ts';

export interface TextProblem extends Span {
  readonly rule: RuleId;
  readonly found: string;
  readonly expected?: string;
  readonly remedy?: string;
  /** See `Problem`. */
  readonly weight?: number;
}

/** The place of a stretch of a one-line text that begins at `place`. */
export function placeWithin(place: Place, { start, end }: Span): Place {
  const column = place.column + start;
  return { file: place.file, line: place.line, column, endLine: place.line, endColumn: Math.max(column + 1, place.column + end) };
}

/** The problem as the author sees it: at its line and column of the file. */
export function locate(problem: TextProblem, place: Place): Problem {
  const { rule, found, start, end, ...more } = problem;
  return error(rule, placeWithin(place, { start, end }), found, more);
}
