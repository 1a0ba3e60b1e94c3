/** The unheld numbers of a note as the command shows them: numbered, placed, each with its offers. */
import { parseMarkdown } from '../../words/markdown.ts';
import { findUnheld, type UnheldNumber } from '../../words/rules/find-unheld.ts';
import { isUnread, readStated, type Stated } from '../../words/stated/read.ts';
import type { Subject } from '../../words/written.ts';
import { contextOf, sentenceAround } from './context.ts';
import { nearestTo } from './nearest.ts';
import { askedBy, bearingOf, type Offer, offersFor } from './offers.ts';

export interface ListedNumber {
  /** Counted from 1 in reading order. */
  readonly number: number;
  readonly start: number;
  readonly end: number;
  readonly line: number;
  readonly column: number;
  /** What would stand between the brackets: on one line. */
  readonly words: string;
  /** The sentence around it, on one line, before and after the words. */
  readonly before: string;
  readonly after: string;
  /** Best first. */
  readonly offers: readonly Offer[];
  /** Where nothing fits: the nearest of its kind, which don't hold it. */
  readonly near: readonly Offer[];
  /** Why it cannot be held where it stands; undefined where it can. */
  readonly why?: string;
}

/** All of them, in reading order. `source` is a note's text without its byte-order mark. */
export function listNumbers(source: string, subjects: ReadonlyMap<string, Subject>): ListedNumber[] {
  const bearing = bearingOf(subjects);
  return findUnheld(source, parseMarkdown(source, true)).map((unheld, index) => {
    const { start, end } = unheld;
    const words = onOneLine(unheld.source);
    const around = sentenceAround(source, start, end);
    const said = saidBy(unheld, words);
    const asked = typeof said === 'string' ? undefined : askedBy(said, words, contextOf(source, start, end));
    const offers = asked ? offersFor(asked, bearing) : [];
    return {
      number: index + 1,
      start,
      end,
      ...placeOf(source, start),
      words,
      before: onOneLine(source.slice(around.start, start)),
      after: onOneLine(source.slice(end, around.end)),
      offers,
      near: asked && offers.length === 0 ? nearestTo(asked, bearing) : [],
      ...(typeof said === 'string' ? { why: said } : {}),
    };
  });
}

/** What the words say when they stand alone, or why they cannot be held. */
function saidBy({ said, linked }: UnheldNumber, words: string): Stated | string {
  if (linked) return 'it stands within the words of a link: put it beside the link';
  if (/[[\]*_`]/.test(words)) return 'Markdown marks stand within it: put them around the whole of it';
  if (isUnread(said)) return `${said.unread}: reword it, or make it a claim`;
  const alone = readStated(words.replaceAll('&nbsp;', '\u00a0').replace(/\\(?=[!-/:-@[-`{-~])/g, ''));
  return isUnread(alone) ? `${alone.unread}: ${alone.expected}` : alone;
}

/** Line breaks, with the marks of a quotation on the next line, as one blank. */
export function onOneLine(text: string): string {
  return text.replace(/[ \t]*(?:\r\n|\n|\r)[ \t>]*/g, ' ');
}

/** Line and column of an offset, from 1. */
export function placeOf(source: string, at: number): { readonly line: number; readonly column: number } {
  const lines = source.slice(0, at).split(/\r\n|\n|\r/);
  return { line: lines.length, column: (lines.at(-1) as string).length + 1 };
}
