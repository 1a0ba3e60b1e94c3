/** Happenings that are counted: throttle events, restarts, hangs. There are whole numbers of them, so that their count is exact. */
import type { Stated } from './stated-number.ts';

/** What happens to a run, by its noun. */
export const HAPPENING = '(?:throttle event|restart|reboot|hang|crash)';
/** The same, one or many. */
export const HAPPENINGS = `${HAPPENING}(?:e?s)?`;
/** Words behind one of them that leave it a happening. Any other makes it a kind of something else: "crash tests", "restart attempts". */
const GOES_ON =
  'of|in|on|at|during|for|under|over|within|before|after|with|without|from|to|until|since|and|or|but|when|while|where|that|which|is|was|has|had|per|an?|the|each|every|only|more|later|alone';
/** The same without a noun behind it. */
export const HAPPENINGS_ALONE = String.raw`${HAPPENING}(?:e?s\b|\b(?!-\p{L}|\s+(?!(?:${GOES_ON})\b)[\p{L}\p{N}]))`;

/** A count of one that stands alone: "once", "only one of them", "a single restart". Within a sentence these words mean much else. */
const SINGLE = new RegExp(
  String.raw`^(\s*(?:(?:only|just|exactly)\s+)?)(?:(?:once|one)(?=\s*$)|(?:one|a\s+single)(?=\s+(?:of\s+(?:them|these|those)|${HAPPENING})\s*$))`,
  'i',
);

/** The same words with the digit, at the same offsets. */
export function withSingle(text: string): string {
  return text.replace(SINGLE, (whole, before: string) => before + '1'.padStart(whole.length - before.length));
}

/** What stands behind a count of them: "2 restarts", "3 unplanned reboots"; "2 restarts per hour" is a rate. */
const COUNTED = new RegExp(String.raw`^\s+(?:\p{Ll}[\p{Ll}-]*\s+)?${HAPPENINGS_ALONE}(?!\s*(?:\/|(?:per|an?|each|every)\s))`, 'iu');
const ONCE = /^\s*(?:(?:only|just|exactly)\s+)?once\s*$/i;

/**
 * A count as it is meant: "one of them", "2 restarts" allow that number and no other, unless a hedge widens it. Counts of happenings are marked
 * as such. `words` is the text as its author wrote it.
 */
export function exactCount(stated: Stated, words: string): Stated {
  const [side, second] = stated.said.sides;
  if (stated.unit !== '1' || second || side.unit || side.amount.place < 0 || side.amount.part !== undefined) return stated;
  const happened = ONCE.test(words) || COUNTED.test(words.slice(side.end));
  if (!happened && !SINGLE.test(words)) return stated;
  const { nominal } = stated;
  const ends = stated.hedge === undefined ? { lower: nominal, upper: nominal, lowerClosed: true, upperClosed: true } : {};
  return { ...stated, ...ends, ...(happened ? { counts: true as const } : {}) };
}
