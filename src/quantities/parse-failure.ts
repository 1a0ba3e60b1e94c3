/** Why a text is no quantity or accuracy, with the place in it. */

export interface ParseFailure {
  /** What was found, one sentence without a final full stop. */
  readonly failure: string;
  /** Where in the text, 0-based, UTF-16 units. */
  readonly offset: number;
  /** What would have been right. */
  readonly expected: string;
}

/** Makes a failure. */
export function fail(failure: string, offset: number, expected: string): ParseFailure {
  return { failure, offset, expected };
}

/** Tells a failure from a result. */
export function isParseFailure(result: unknown): result is ParseFailure {
  return typeof result === 'object' && result !== null && 'failure' in result;
}
