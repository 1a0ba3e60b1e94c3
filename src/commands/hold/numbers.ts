/** The unheld numbers of a note as the command shows them: numbered, placed, each with its offers. */
import type { Note } from '../../register/register.ts';
import { frontTexts } from '../../words/front-words.ts';
import { parseMarkdown } from '../../words/page/markdown.ts';
import { captionsIn } from '../../words/page/picture-nodes.ts';
import { beginWriting } from '../../words/page/writing.ts';
import { unitBehind } from '../../words/rules/beside-number.ts';
import { findUnheld, type UnheldNumber } from '../../words/rules/find-unheld.ts';
import { COUNT_OF_ONE } from '../../words/rules/other-amounts.ts';
import { ownWords } from '../../words/rules/own-words.ts';
import { shownValue } from '../../words/rules/shown-value.ts';
import { findStated, isUnread, readStated, type Stated } from '../../words/stated/read.ts';
import type { Subject } from '../../words/written.ts';
import { askedBy } from './asked.ts';
import { bearingOf } from './bearing.ts';
import { contextOf, sentenceAround } from './context.ts';
import { type Miss, missesFor } from './misses.ts';
import { namedElsewhere } from './named-runs.ts';
import { isSure, type Offer, offersFor } from './offers.ts';
import { rankClaims } from './rank-claims.ts';

export interface ListedNumber {
  /** Counted from 1 in reading order. */
  readonly number: number;
  readonly start: number;
  readonly end: number;
  /** The quotes that its expression must have: within a value in double ones. */
  readonly quote?: "'";
  readonly line: number;
  readonly column: number;
  /** What would stand between the brackets: on one line. */
  readonly words: string;
  /** The sentence around it, on one line, before and after the words. */
  readonly before: string;
  readonly after: string;
  /** Best first. */
  readonly offers: readonly Offer[];
  /** Aliases of the runs that the sentence names, where no offer is of one of them. */
  readonly named?: readonly string[];
  /** What the words nearly say, and why it doesn't hold them. */
  readonly near: readonly Miss[];
  /** Whether nobody would ask which of the offers is meant: the first. */
  readonly sure?: true;
  /** The unit of a number that stands without it. */
  readonly unit?: string;
  /** Why it cannot be held where it stands; undefined where it can. */
  readonly why?: string;
}

/** All of them in the order of the file, those of title, summary and disclosure too. */
export function listNumbers(
  note: Pick<Note, 'file' | 'kind' | 'text' | 'front'>,
  subjects: ReadonlyMap<string, Subject>,
): ListedNumber[] {
  const bearing = bearingOf(subjects);
  const { units } = ownWords(subjects);
  return unheldOf(note, subjects).map(({ unheld, at, source, value }, index) => {
    const { start, end } = unheld;
    const words = onOneLine(unheld.source);
    const around = sentenceAround(value, start, end);
    const said = at.start < at.end ? saidBy(unheld, words, units) : 'its value has escapes or marks in it: write it plainly';
    const [before, after] = [onOneLine(value.slice(around.start, start)), onOneLine(value.slice(end, around.end))];
    const sentence = { before, after };
    const context = contextOf(value, start, end);
    const asked = typeof said === 'string' ? undefined : askedBy(said, words, { context, sentence }, unheld.unit);
    const ranked = unheld.rank && !unheld.linked ? rankClaims(words, context, bearing) : undefined;
    const offers = asked ? offersFor(asked, bearing) : (ranked?.offers ?? []);
    const named = namedElsewhere(offers, context, bearing);
    const near = asked ? missesFor(asked, bearing) : [];
    return {
      number: index + 1,
      ...at,
      ...placeOf(source, at.start),
      words,
      before,
      after,
      offers,
      ...(named === undefined ? {} : { named }),
      near,
      ...(asked && near.length === 0 && named === undefined && isSure(asked, bearing) ? { sure: true } : {}),
      ...(unheld.unit === undefined ? {} : { unit: unheld.unit }),
      ...(typeof said === 'string' && offers.length === 0 ? { why: ranked?.why ?? said } : {}),
    };
  });
}

interface Placed {
  /** Its offsets are into `value`. */
  readonly unheld: UnheldNumber;
  /** Where it stands in the file. */
  readonly at: Pick<ListedNumber, 'start' | 'end' | 'quote'>;
  readonly source: string;
  /** The text in which it was found: the file, or a value of its front matter. */
  readonly value: string;
}

function unheldOf(
  { file, kind, text, front }: Pick<Note, 'file' | 'kind' | 'text' | 'front'>,
  subjects: ReadonlyMap<string, Subject>,
): Placed[] {
  const [own, shown] = [ownWords(subjects), shownValue(subjects)];
  const writing = beginWriting({ file, kind, source: text, lineShift: 0, subjects: new Map() });
  const { source } = writing;
  const ahead = frontTexts({ ...(front ? { front } : {}) }, writing).flatMap(({ writing: within, tree }) => {
    const offsets = within.within?.offsets ?? [];
    const quote = source[(offsets[0] ?? 0) - 1] === '"' ? ({ quote: "'" } as const) : {};
    return findUnheld(within.source, tree, own, shown).map((unheld): Placed => {
      const [start = 0, end = 0] = [offsets[unheld.start], offsets[unheld.end]];
      return { unheld, at: { start, end, ...quote }, source, value: within.source };
    });
  });
  const tree = parseMarkdown(source, true);
  const captions = captionsIn(tree).filter(({ quote }) => quote === '"');
  const inText = findUnheld(source, tree, own, shown).map((unheld): Placed => {
    const { start, end } = unheld;
    const quote = captions.some((caption) => caption.start <= start && end <= caption.end) ? ({ quote: "'" } as const) : {};
    return { unheld, at: { start, end, ...quote }, source, value: source };
  });
  return [...ahead.sort((a, b) => a.at.start - b.at.start), ...inText];
}

/** What the words say when they stand alone, or why they cannot be held. */
function saidBy({ said, linked, unit }: UnheldNumber, words: string, units: ReadonlySet<string>): Stated | string {
  if (linked) return 'it stands within the words of a link: put it beside the link';
  if (/[[\]*_`]/.test(words)) return 'Markdown marks stand within it: put them around the whole of it';
  if (isUnread(said) && said.unread !== COUNT_OF_ONE) return `${said.unread}: reword it, or make it a claim`;
  const plain = words.replaceAll('&nbsp;', '\u00a0').replace(/\\(?=[!-/:-@[-`{-~])/g, '');
  const alone = readStated(unit === undefined ? plain : `${plain} ${unit}`);
  if (!isUnread(alone)) return alone;
  // "8.2 gigabytes a second": what stands behind the number is its unit, not another number.
  const [first] = findStated(plain);
  if (first && !isUnread(first) && unitBehind(plain.slice(first.end), units) === plain.slice(first.end)) return first;
  return `${alone.unread}: ${alone.expected}`;
}

/** Line breaks, with the marks of a quotation on the next line, as one blank. */
function onOneLine(text: string): string {
  return text.replace(/[ \t]*(?:\r\n|\n|\r)[ \t>]*/g, ' ');
}

/** Line and column of an offset, from 1. */
export function placeOf(source: string, at: number): { readonly line: number; readonly column: number } {
  const lines = source.slice(0, at).split(/\r\n|\n|\r/);
  return { line: lines.length, column: (lines.at(-1) as string).length + 1 };
}
