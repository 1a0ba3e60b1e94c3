/** Words and marks beside a number that are part of it, and that no rule reads: with them it would be read as another number. */
import { digitAt, PARTS } from './cardinal.ts';
import { type Unread, unread } from './stated-number.ts';
import type { Token } from './tokens.ts';
import { unitAt } from './unit-said.ts';

const WHOLE = 'the whole number in digits or words: 71 degrees, 1,000 W, 1 h 20 min, three tenths of a volt';
const JOINS = new Set('or to and in out of maybe perhaps possibly even ,'.split(' '));
/** "Half of" is read as a number of its own. */
const BEFORE_OF = new Set(['fraction', ...[...PARTS.keys()].filter((word) => word !== 'half')]);
/** Words after a number without a unit that leave open what it is. */
export const OPEN: ReadonlySet<string> = new Set('odd something some dozen dozens gross'.split(' '));
/** Words after "a minute" that make it a time of its own: "71 degrees an hour later". */
const TIMES = new Set('later after before earlier in into on ago apart or and'.split(' '));

/** Refuses a number of which the tokens from `at` to `next` are only a part. `start` is where its hedge begins. */
export function unreadBeside(
  tokens: readonly Token[],
  at: number,
  start: number,
  next: number,
  hasUnit: boolean,
): Unread | undefined {
  return gluedBefore(tokens, at) ?? partBefore(tokens, start) ?? oneBefore(tokens, start) ?? openAfter(tokens, next, hasUnit);
}

/** The problem of a word or mark beside a number. */
export function refusedBy(token: Token, where: 'before' | 'after' | 'within' | 'between'): Unread {
  return unread(`"${token.text}" ${where} ${where === 'between' ? 'numbers' : 'a number'}`, token.start, WHOLE);
}

/** `1_000`, `2·4`, `10...20`: the rest of a run without blanks that begins with a number. */
function gluedBefore(tokens: readonly Token[], at: number): Unread | undefined {
  let first = at;
  while (tokens[first]?.glued && tokens[first - 1]?.kind === 'mark') first -= 1;
  const head = tokens[first - 1];
  const glued = first < at && tokens[first]?.glued === true && (head?.kind === 'number' || head?.kind === 'power');
  return glued ? refusedBy(tokens[at - 1]!, 'within') : undefined;
}

/** "Tenths of a volt", "a fraction of a watt", "two point ten", "one oh five". */
function partBefore(tokens: readonly Token[], start: number): Unread | undefined {
  const [second, first] = [tokens[start - 2], tokens[start - 1]];
  if (first?.low === 'of' && second && BEFORE_OF.has(second.low)) return refusedBy(second, 'before');
  const point = first?.low === 'point' && (second?.kind === 'number' || digitAt(tokens, start - 2) !== undefined);
  const oh = (first?.low === 'oh' || first?.low === 'o') && digitAt(tokens, start - 2) !== undefined;
  return point || oh ? refusedBy(first!, 'before') : undefined;
}

/** "One or two watts", "one in three": "one" is no number by itself, and here it is. */
function oneBefore(tokens: readonly Token[], start: number): Unread | undefined {
  let at = start - 1;
  while (JOINS.has(tokens[at]?.low ?? '')) at -= 1;
  const joined = at < start - 1 && tokens.slice(at + 1, start).some(({ low }) => low !== ',' && low !== 'of' && low !== 'and');
  return joined && tokens[at]?.low === 'one' ? refusedBy(tokens[at]!, 'before') : undefined;
}

/** "Fifty something degrees", "half a dozen", `1h20`, "two degrees a minute". */
function openAfter(tokens: readonly Token[], next: number, hasUnit: boolean): Unread | undefined {
  const [token, second] = [tokens[next], tokens[next + 1]];
  if (!token) return undefined;
  if (token.low === 'less' && second?.kind === 'number') return refusedBy(token, 'between');
  if (!hasUnit && OPEN.has(token.low)) return refusedBy(token, 'after');
  if (token.glued && token.kind === 'number') return refusedBy(token, 'after');
  const article = token.low === 'a' || token.low === 'an';
  if (article && second && (second.low === 'dozen' || second.low === 'gross')) return refusedBy(second, 'after');
  const unit = article && hasUnit ? unitAt(tokens, next + 1, undefined) : undefined;
  if (unit?.unit.kind !== 'time' || TIMES.has(tokens[unit.next]?.low ?? '')) return undefined;
  return unread(`"${token.text} ${second!.text}" after a number`, token.start, 'the rate with "per": 2 kelvin per minute');
}
