/** A refusal: arithmetic or a conversion that has no meaning. The caller knows the place and makes a located problem of it. */

export interface Refusal {
  /** What was found, with both operands, one sentence without a final full stop. */
  readonly refused: string;
  /** What would have been right. */
  readonly expected?: string;
}

/** Makes a refusal. */
export function refuse(refused: string, expected?: string): Refusal {
  return expected === undefined ? { refused } : { refused, expected };
}

/** Tells a refusal from a result. */
export function isRefusal(result: unknown): result is Refusal {
  return typeof result === 'object' && result !== null && 'refused' in result;
}
