/** The words around a number, with how much each counts: near ones more, those beyond a comma less, earlier sentences little. */
import { type CellWords, cellAt } from './table-cell.ts';

export interface ContextWord {
  readonly word: string;
  readonly weight: number;
  /** Of the number's own sentence, or what names its cell. */
  readonly own?: boolean;
  /** How many words it stands behind the number, from 1. */
  readonly behind?: number;
}

/** Words over which a weight falls to half. */
const NEAR = 8;
const BEYOND_A_MARK = 0.6;
const EARLIER_SENTENCE = 0.35;
const HEADING = 0.3;
const TOKEN = /\p{L}+|\p{N}[\p{N}.,]*|[,;:—–()]/gu;
const SENTENCE_END = /[.!?](?=["')\]*_]*(?:\s|$))/g;

/**
 * The context of the stretch from `start` to `end`: its sentence, the paragraph before it, the heading above; in a table its row and the
 * head of its column. In lower case.
 */
export function contextOf(source: string, start: number, end: number): ContextWord[] {
  const cell = cellAt(source, start);
  return cell ? contextOfCell(source, start, cell) : contextOfSentence(source, start, end);
}

/** What names a cell counts in full, the rest of its row and of the table's head a little. */
const ELSEWHERE_IN_TABLE = 0.15;

function contextOfCell(source: string, start: number, { cell, head, first, others }: CellWords): ContextWord[] {
  return [
    ...own(weighed(`${cell} ${head} ${first}`, 1)),
    ...weighed(others, ELSEWHERE_IN_TABLE),
    ...weighed(headingAbove(source, start), HEADING),
  ];
}

function weighed(text: string, weight: number): ContextWord[] {
  return spoken(text).map((word) => ({ word, weight }));
}

function contextOfSentence(source: string, start: number, end: number): ContextWord[] {
  const paragraph = paragraphStart(source, start);
  const before = source.slice(paragraph, start);
  const sentence = lastEnd(before);
  const after = source.slice(end).split(/\r?\n[ \t>]*\r?\n/, 1)[0] as string;
  const stop = after.search(SENTENCE_END);
  return [
    ...own(falling([...words(before.slice(sentence))].reverse())),
    ...own(falling([...words(stop < 0 ? after : after.slice(0, stop))])).map((word, index) => ({ ...word, behind: index + 1 })),
    ...earlier(before.slice(0, sentence)),
    ...weighed(headingAbove(source, paragraph), HEADING),
  ];
}

function own(context: readonly ContextWord[]): ContextWord[] {
  return context.map((each) => ({ ...each, own: true }));
}

/** The sentence that a stretch stands in, for showing: offsets in the source, white space trimmed. */
export function sentenceAround(source: string, start: number, end: number): { readonly start: number; readonly end: number } {
  const cell = cellAt(source, start);
  if (cell) return cell.row;
  const paragraph = paragraphStart(source, start);
  const from = paragraph + lastEnd(source.slice(paragraph, start));
  const after = source.slice(end).split(/\r?\n[ \t>]*\r?\n/, 1)[0] as string;
  const stop = after.search(SENTENCE_END);
  const blank = /^[\s>]*/.exec(source.slice(from, start))?.[0].length ?? 0;
  return { start: from + blank, end: end + (stop < 0 ? after.trimEnd().length : stop + 1) };
}

function words(text: string): string[] {
  return (text.toLowerCase().match(TOKEN) ?? []) as string[];
}

/** Words and numbers, without the marks between them. */
function spoken(text: string): string[] {
  return words(text).filter((word) => /^[\p{L}\p{N}]/u.test(word));
}

function falling(tokens: readonly string[]): ContextWord[] {
  let marks = 0;
  return tokens.flatMap((word, distance) => {
    if (!/^[\p{L}\p{N}]/u.test(word)) {
      marks += 1;
      return [];
    }
    return [{ word, weight: BEYOND_A_MARK ** Math.min(marks, 2) / (1 + distance / NEAR) }];
  });
}

/** The sentences before, the last one counting most. */
function earlier(text: string): ContextWord[] {
  const sentences = text.split(SENTENCE_END).reverse();
  return sentences.slice(0, 4).flatMap((sentence, index) => weighed(sentence, EARLIER_SENTENCE / (index + 1)));
}

function lastEnd(text: string): number {
  let at = 0;
  for (const { index, 0: end } of text.matchAll(SENTENCE_END)) at = index + end.length;
  return at;
}

/** A blank line, the start of a list item, a heading or the front matter's end begins one. */
function paragraphStart(source: string, at: number): number {
  let start = 0;
  for (const { index, 0: gap } of source
    .slice(0, at)
    .matchAll(/\r?\n(?:[ \t>]*\r?\n)+|\n---\r?\n|\n[ \t>]*(?:[-*+]|\d+[.)])[ \t]+|\n#+ /g))
    start = index + gap.length;
  return start;
}

function headingAbove(source: string, at: number): string {
  return [...source.slice(0, at).matchAll(/^#+ (.*)$/gm)].at(-1)?.[1] ?? '';
}
