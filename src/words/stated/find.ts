/** Finds the number phrases of a text, each with its hedge and its comparison. */
import { changes, comparisonAfter, comparisonBefore, comparisonRefused } from './comparison-words.ts';
import { deniedBefore, type HedgeFound, hedgeAfter, hedgeBefore } from './hedge-at.ts';
import { type NumberFound, numberWithUnitAt } from './number-with-unit.ts';
import type { Phrase, SaidNumber, UnitSaid } from './phrase.ts';
import { isUnread, type Unread, unread } from './stated-number.ts';
import { type Token, tokenise } from './tokens.ts';
import { unitAt } from './unit-said.ts';
import { unreadBeside } from './unread-words.ts';
import type { WordsBetween } from './words-between.ts';

const DASHES = new Set(['–', '—', '-', '−', '‐', '‑']);

/** All number phrases of a text in their order; Unread for each place where a number stands that cannot be read. */
export function phrasesOf(text: string): (Phrase | Unread)[] {
  const tokens = tokenise(text);
  const phrases: (Phrase | Unread)[] = [];
  let at = 0;
  while (at < tokens.length) {
    const found = phraseAt(text, tokens, at);
    if (found) phrases.push(found.phrase);
    at = found?.next ?? at + 1;
  }
  return phrases;
}

interface PhraseFound {
  readonly phrase: Phrase | Unread;
  readonly next: number;
}

function phraseAt(text: string, tokens: readonly Token[], at: number): PhraseFound | undefined {
  const before = hedgeBefore(tokens, at);
  const journey = before?.name === 'between' && tokens[before.at]?.low === 'from' && changes(tokens[before.at - 1]);
  const ofVerb = before !== undefined && belongsToVerb(tokens, before);
  const hedge = journey || ofVerb ? undefined : before;
  const between = hedge?.name === 'between';
  const first = numberWithUnitAt(tokens, at, between && tokens[hedge.at]?.low !== 'from' && tokens[at - 1]?.low === 'between');
  if (!first) return undefined;
  if (isUnread(first))
    return { phrase: withMeasure(first, tokens[at]!.start, unitAt(tokens, at + 1, 'digits')?.unit), next: at + 1 };
  const second = journey ? undefined : secondAt(tokens, first, between);
  const failed = second && isUnread(second) ? second : undefined;
  if (failed) return { phrase: failed, next: first.next };
  const last = (second as Second | undefined) ?? { ...first, plusMinus: false };
  const sides: readonly [SaidNumber] | readonly [SaidNumber, SaidNumber] = second ? sidesOf(first.side, last.side) : [first.side];
  const inner = last.inner ?? first.inner;
  return complete({
    text,
    tokens,
    at,
    from: ofVerb ? before.at : at,
    hedge: soleHedge(hedge, sides),
    sides,
    plusMinus: last.plusMinus,
    next: last.next,
    between,
    ...(inner && { inner }),
  });
}

/** Verbs that "up to" or "over" may belong to: "climbed up to 65 degrees", "fell over eight minutes into the load". */
const GOES_UP =
  /^(?:climb|clock|come|came|creep|crept|get|got|go|goes|went|heat|jump|push|ramp|rise|rose|rises|shoot|shot|speed|spin|spun|step|warm|wind|wound)(?:s|ed|ped|es|ing)?$/;

/** Whether the words of a hedge belong to the verb before them: what is reached, or how long it took. */
function belongsToVerb(tokens: readonly Token[], { name, at, next }: HedgeFound): boolean {
  const verb = tokens[at - 1];
  const words = tokens.slice(at, next).map(({ low }) => low);
  if (name === 'up to' && words.join(' ') === 'up to') return GOES_UP.test(verb?.low ?? '');
  if (words.join(' ') !== 'over' || !(changes(verb) || GOES_UP.test(verb?.low ?? ''))) return false;
  const found = numberWithUnitAt(tokens, next, false);
  return found !== undefined && !isUnread(found) && found.side.unit?.kind === 'time';
}

const PLUS_MINUS = new Set(['plus or minus', 'give or take', '+ / -', '+ / −']);

interface Second extends NumberFound {
  readonly plusMinus: boolean;
}

/** The second number of a range or of a ±. */
function secondAt(tokens: readonly Token[], first: NumberFound, between: boolean): Second | Unread | undefined {
  const token = tokens[first.next];
  const three = tokens.slice(first.next, first.next + 3).map(({ low }) => low);
  const words = PLUS_MINUS.has(three.join(' ')) ? 3 : 0;
  const plusMinus = token?.text === '±' || words > 0;
  const binds = plusMinus || token?.low === 'to' || DASHES.has(token?.text ?? '') || (between && token?.low === 'and');
  if (!token || !binds) return undefined;
  const found = numberWithUnitAt(tokens, first.next + Math.max(1, words));
  if (!found) return undefined;
  if (isUnread(found)) return found;
  if (first.side.unit && !found.side.unit) return undefined;
  return { ...found, plusMinus };
}

/** A unit after the second number serves both: "69 to 72 degrees". */
function sidesOf(first: SaidNumber, second: SaidNumber): readonly [SaidNumber, SaidNumber] {
  return [first.unit || !second.unit ? first : { ...first, unit: second.unit, unitBorrowed: true }, second];
}

/** "From" before a single number is no hedge: "rises from 58 degrees". */
function soleHedge(hedge: HedgeFound | undefined, sides: readonly SaidNumber[]): HedgeFound | undefined {
  return hedge?.name === 'between' && sides.length === 1 ? undefined : hedge;
}

interface Draft {
  readonly text: string;
  readonly tokens: readonly Token[];
  readonly at: number;
  /** Where words begin that belong to the verb before the number and are no hedge of it; else `at`. */
  readonly from: number;
  readonly hedge: HedgeFound | undefined;
  readonly sides: Phrase['sides'];
  readonly plusMinus: boolean;
  readonly next: number;
  readonly between: boolean;
  readonly inner?: WordsBetween;
}

/** Adds what stands before and after the numbers; refuses what would turn their meaning round. */
function complete(draft: Draft): PhraseFound {
  const { text, tokens, at, sides, plusMinus } = draft;
  const after = hedgeAfter(tokens, draft.next);
  const compared = comparisonAfter(tokens, after?.next ?? draft.next);
  const next = compared?.next ?? after?.next ?? draft.next;
  const later = after ? undefined : hedgeAfter(tokens, next);
  const hedges = [draft.hedge, draft.inner?.hedge, after, later].filter((hedge) => hedge !== undefined);
  const start = draft.hedge?.at ?? at;
  const end = later?.next ?? next;
  const refused = refusal(draft, hedges, start, after?.next ?? draft.next);
  const place = { start: tokens[start]!.start, end: tokens[end - 1]!.end };
  const { amount, unit } = sides.at(-1) as SaidNumber;
  if (refused) return { phrase: withMeasure(refused, place.start, amount.article ? undefined : unit), next: end };
  const comparison =
    compared?.comparison ?? draft.inner?.comparison ?? (draft.from < at ? undefined : comparisonBefore(tokens, start)?.comparison);
  const hedge = hedges[0] && { name: hedges[0].name, start: tokens[hedges[0].at]!.start, end: tokens[hedges[0].next - 1]!.end };
  return { phrase: { text, sides, plusMinus, ...place, ...(hedge && { hedge }), ...(comparison && { comparison }) }, next: end };
}

/** Names the phrase that is refused, where it has a unit; "not an hour" is an idiom. */
function withMeasure(refused: Unread, start: number, unit: UnitSaid | undefined): Unread {
  return unit ? { ...refused, measure: { start: Math.min(start, refused.offset), end: unit.end, unit } } : refused;
}

function refusal(draft: Draft, hedges: readonly HedgeFound[], start: number, compared: number): Unread | undefined {
  const { tokens, at, sides, plusMinus, between, next } = draft;
  const place = tokens[at]!.start;
  const [first, second] = sides;
  if (between && !second && tokens[at - 1]?.low === 'between')
    return unread('"between" with one number', place, 'between 69 and 72 degrees');
  const names = hedges.map(({ name }) => name);
  if (names.length > 1) return unread(`two hedges: ${names.join(' and ')}`, tokens[hedges[1]!.at]!.start, 'one hedge at most');
  const odd = second ? names.find((name) => name !== 'between' && (plusMinus || name !== 'about')) : undefined;
  if (odd !== undefined) return unread(`a range with "${odd}"`, place, 'a range alone, or "about" before it');
  const stray = unreadBeside(tokens, at, start, next, (second ?? first).unit !== undefined);
  return (
    draft.inner?.refused ??
    stray ??
    deniedBefore(tokens, Math.min(start, draft.from)) ??
    comparisonRefused(tokens, compared, second ?? first)
  );
}
