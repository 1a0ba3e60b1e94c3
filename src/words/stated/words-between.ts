/** Words between a number and its unit: "30 or so watts", "five more degrees", "two full hours". */
import { type HedgeFound, hedgeAfter } from './hedge-at.ts';
import type { Comparison } from './phrase.ts';
import type { Unread } from './stated-number.ts';
import type { Token } from './tokens.ts';
import { OPEN, refusedBy } from './unread-words.ts';

export interface WordsBetween {
  readonly hedge?: HedgeFound;
  readonly comparison?: Comparison;
  /** What leaves the number open: "sixty-odd degrees". */
  readonly refused?: Unread;
  /** Index of the unit's first token. */
  readonly next: number;
}

const ADJECTIVES = new Set('whole full solid entire long short straight'.split(' '));
const COMPARED: ReadonlyMap<string, Comparison['kind']> = new Map([
  ['more', 'more'],
  ['fewer', 'less'],
  ['less', 'less'],
  ['extra', 'apart'],
  ['additional', 'apart'],
  ['further', 'apart'],
]);

/** What stands at a token, where a unit is expected after it; undefined where it is none of these words. */
export function wordsBetweenAt(tokens: readonly Token[], at: number): WordsBetween | undefined {
  const token = tokens[at];
  if (!token) return undefined;
  if (ADJECTIVES.has(token.low)) return { next: at + 1 };
  const kind = COMPARED.get(token.low);
  if (kind) return { comparison: { kind, ofRatio: false, start: token.start, end: token.end }, next: at + 1 };
  if (OPEN.has(token.low)) return { refused: refusedBy(token, 'after'), next: at + 1 };
  const hedge = hedgeAfter(tokens, at, true);
  return hedge && hedge.at === at ? { hedge, next: hedge.next } : undefined;
}
