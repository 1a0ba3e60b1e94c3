/**
 * A located problem: where, which rule, what was found, what was expected, what to do.
 * Every phase reports through this one type; commands print it and set the exit code.
 */

import { visible } from './hidden-characters.ts';

/** A place in a file of the project. Lines and columns are 1-based; columns count UTF-16 units. */
export interface Place {
  /** Path below the project folder, with forward slashes. */
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine?: number;
  /** Exclusive. */
  readonly endColumn?: number;
}

export type Severity = 'error' | 'warning';

export interface Problem {
  readonly severity: Severity;
  /** Permanent name of the rule, kebab-case; it never changes meaning. */
  readonly rule: string;
  readonly place: Place;
  /** What was found, one sentence without a final full stop. */
  readonly found: string;
  /** What would have been right. */
  readonly expected?: string;
  /** What the author can do about it. */
  readonly remedy?: string;
  /** Set where problems of this rule are told in one list at the end of a report: those with the largest number come first. */
  readonly weight?: number;
}

/** An error at a place. Use it for all that must not be published. */
export function error(rule: string, place: Place, found: string, more: Pick<Problem, 'expected' | 'remedy'> = {}): Problem {
  return problem('error', rule, place, found, more);
}

/** A warning at a place: the build goes on, the author should look. */
export function warning(rule: string, place: Place, found: string, more: Pick<Problem, 'expected' | 'remedy'> = {}): Problem {
  return problem('warning', rule, place, found, more);
}

/** Its sentences quote files, and go to terminals and pages: what nobody sees is shown by its name. */
function problem(
  severity: Severity,
  rule: string,
  place: Place,
  found: string,
  more: Pick<Problem, 'expected' | 'remedy'>,
): Problem {
  const { expected, remedy } = more;
  return {
    severity,
    rule,
    place,
    found: visible(found),
    ...more,
    ...(expected === undefined ? {} : { expected: visible(expected) }),
    ...(remedy === undefined ? {} : { remedy: visible(remedy) }),
  };
}

/** Orders problems by file, line, column, rule, text, so that a report has one form. */
export function compareProblems(a: Problem, b: Problem): number {
  return (
    compareText(a.place.file, b.place.file) ||
    a.place.line - b.place.line ||
    a.place.column - b.place.column ||
    compareText(a.rule, b.rule) ||
    compareText(a.found, b.found)
  );
}

/** Compares by code units: the same order in every locale. */
export function compareText(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}
