/** Finds the hedge before or after a number. */
import { HEDGES } from './hedges.ts';
import { type Unread, unread } from './stated.ts';
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

/** The hedge whose last word stands right before a token. */
export function hedgeBefore(tokens: readonly Token[], at: number): HedgeFound | undefined {
  const form = BEFORE.find(({ words }) => wordsStand(tokens, at - words.length, words));
  return form && { name: form.name, at: at - form.words.length, next: at };
}

/** The hedge whose first word stands at a token. */
export function hedgeAfter(tokens: readonly Token[], at: number): HedgeFound | undefined {
  const form = AFTER.find(({ words }) => wordsStand(tokens, at, words));
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

/** What stands before number and hedge and would turn their meaning round, or a second hedge. */
export function deniedBefore(tokens: readonly Token[], at: number): Unread | undefined {
  const token = tokens[at - 1];
  if (!token) return undefined;
  const second = hedgeBefore(tokens, at);
  if (second && second.name !== 'between') return unread(`two hedges, the first "${token.low}"`, token.start, EXPECTED);
  const denied = DENIED.has(token.low) || token.low.endsWith("n't");
  return denied ? unread(`"${token.text}" before a number`, token.start, EXPECTED) : undefined;
}
