/** Cuts the words of a script into captions of two short lines. */
import type { Token } from './tokens.ts';

/** Signs on a line and lines of a caption: common practice, no source. */
export const LINE = 42;
const LINES = 2;
/** A caption is cut at the end of a sentence or clause where that leaves it this full at least. */
const FULL_ENOUGH = 0.4;

export interface Caption {
  readonly lines: readonly string[];
  /** Spoken words in it. */
  readonly words: number;
}

/** The captions of a block, in order. A token longer than a line has a line of its own. */
export function captionsOf(tokens: readonly Token[]): Caption[] {
  const captions: Caption[] = [];
  let open: Token[] = [];
  for (const token of tokens) {
    if (open.length > 0 && linesOf([...open, token]).length > LINES) {
      const cut = cutOf(open);
      captions.push(captionOf(open.slice(0, cut)));
      open = open.slice(cut);
    }
    open.push(token);
  }
  return open.length > 0 ? [...captions, captionOf(open)] : captions;
}

/** How many tokens go out: up to the last sentence's or clause's end far enough along, else all. */
function cutOf(tokens: readonly Token[]): number {
  const far = (end: number): boolean => textOf(tokens.slice(0, end)).length >= FULL_ENOUGH * LINE * LINES;
  for (const ends of [/[.!?…]["'”’)\]]*$/, /[,;:–—]["'”’)\]]*$/]) {
    const last = tokens.findLastIndex(({ shown }) => ends.test(shown)) + 1;
    if (last > 0 && far(last)) return last;
  }
  return tokens.length;
}

function captionOf(tokens: readonly Token[]): Caption {
  return { lines: balanced(tokens), words: tokens.reduce((sum, { words }) => sum + words, 0) };
}

/** Lines filled one after the other. */
function linesOf(tokens: readonly Token[]): string[] {
  const lines: string[] = [];
  for (const { shown } of tokens) {
    const longer = `${lines.at(-1)} ${shown}`;
    if (lines.length > 0 && longer.length <= LINE) lines[lines.length - 1] = longer;
    else lines.push(shown);
  }
  return lines;
}

/** One line where it fits, else the two that differ least in length. */
function balanced(tokens: readonly Token[]): string[] {
  const filled = linesOf(tokens);
  if (filled.length !== LINES) return filled;
  const splits = tokens.slice(1).map((_, index) => [textOf(tokens.slice(0, index + 1)), textOf(tokens.slice(index + 1))]);
  const longest = (lines: readonly string[]): number => Math.max(...lines.map(({ length }) => length));
  return splits.reduce((best, split) => (longest(split) < longest(best) ? split : best), filled);
}

function textOf(tokens: readonly Token[]): string {
  return tokens.map(({ shown }) => shown).join(' ');
}
