/** Finds the hedge before or after a number. */
import { HEDGES } from './hedges.ts';
import { type Unread, unread } from './stated-number.ts';
import { type Token, tokenise } from './tokens.ts';

/** A hedge's words among the tokens: indices, `next` exclusive. */
export interface HedgeFound {
  readonly name: string;
  readonly at: number;
  readonly next: number;
}

type Forms = readonly { readonly name: string; readonly words: readonly string[] }[];

const BEFORE: Forms = formsOf('before');
const AFTER: Forms = formsOf('after');

/** By length, the longest first: "not more than" before "more than". */
function formsOf(side: 'before' | 'after'): Forms {
  const forms = HEDGES.flatMap((hedge) =>
    hedge[side].map((form) => ({ name: hedge.name, words: tokenise(form).map(({ low }) => low) })),
  );
  return forms.sort((a, b) => b.words.length - a.words.length);
}

/** Forms by their last word: they are many. */
const BEFORE_BY_LAST: ReadonlyMap<string | undefined, Forms> = Map.groupBy(BEFORE, ({ words }) => words.at(-1));

/** "Adds up to 38 kJ" is a sum, and no limit. */
const ADDS = new Set(['add', 'adds', 'added', 'adding', 'sum', 'sums', 'summed']);

/** The hedge whose last word stands right before a token. */
export function hedgeBefore(tokens: readonly Token[], at: number): HedgeFound | undefined {
  const form = BEFORE_BY_LAST.get(tokens[at - 1]?.low)?.find(
    ({ name, words }) => wordsStand(tokens, at - words.length, words) && !(name === 'up to' && ADDS.has(tokens[at - 3]?.low ?? '')),
  );
  return form && { name: form.name, at: at - form.words.length, next: at };
}

/** These add to what follows them, or belong to it, unless nothing does: "60 watts plus 3", "80 degrees max". */
const CLOSING = new Set(['plus', '+', 'max', 'tops']);

/** The hedge whose first word stands at a token, or after a comma there. `inner`: a unit is to follow ("71-plus degrees"). */
export function hedgeAfter(tokens: readonly Token[], from: number, inner = false): HedgeFound | undefined {
  const at = tokens[from]?.text === ',' ? from + 1 : from;
  const closes = ({ length }: readonly string[]) => inner || /^[^\p{L}\p{N}]?$/u.test(tokens[at + length]?.text ?? '');
  const form = AFTER.find(({ words }) => wordsStand(tokens, at, words) && (!CLOSING.has(words[0]!) || closes(words)));
  return form && { name: form.name, at, next: at + form.words.length };
}

function wordsStand(tokens: readonly Token[], at: number, words: readonly string[]): boolean {
  return at >= 0 && words.every((word, index) => tokens[at + index]?.low === word);
}

/** Words before a number that deny it or leave open what it is. */
const DENIED = new Set(
  'not never no nor neither hardly scarcely barely without except but than unlike cannot almost nearly'.split(' '),
);
const EXPECTED = 'the number itself, or with one hedge: about, nearly, under, over, at least, at most …';

/** Words that deny what follows them in their clause: "never reached 60 degrees". */
const DENYING = new Set('not never nor neither hardly scarcely without cannot nowhere'.split(' '));
/** Pairs of words right before a number that put it aside. */
const ASIDE = new Set(['far from', 'away from', 'instead of', 'out of', 'nothing like']);
/** How many words back a denial reaches. */
const REACH = 5;

/** What stands before number and hedge and would turn their meaning round, or a second hedge. */
export function deniedBefore(tokens: readonly Token[], at: number): Unread | undefined {
  const token = tokens[at - 1];
  if (!token) return undefined;
  const second = hedgeBefore(tokens, at);
  if (second && second.name !== 'between') return unread(`two hedges, the first "${token.low}"`, token.start, EXPECTED);
  const aside = ASIDE.has(`${tokens[at - 2]?.low} ${token.low}`);
  const denial = aside || DENIED.has(token.low) ? token : denialIn(tokens, at);
  return denial && unread(`"${denial.text}" before a number`, denial.start, EXPECTED);
}

/** "The highest clock that passed without added voltage was 2.2 GHz": with a verb between, the number is not what is missing. */
const SAYS = new Set('is was are were has had draws drew takes took reaches reached settles settled'.split(' '));

/** The denying word nearest before a token, within its clause. */
function denialIn(tokens: readonly Token[], at: number): Token | undefined {
  const before = tokens.slice(Math.max(0, at - REACH), at);
  const clause = before.slice(before.findLastIndex(({ text }) => /^[.,;:!?()]$/.test(text)) + 1);
  return clause.findLast(({ low }, index) => {
    if (low === 'without') return !clause.slice(index + 1).some((later) => SAYS.has(later.low));
    return DENYING.has(low) || low.endsWith("n't");
  });
}
