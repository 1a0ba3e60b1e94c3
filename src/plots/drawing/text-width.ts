/** How wide a line of text is in the plots' face. */
import { REGULAR_WIDTHS } from './glyph-widths.ts';

const WIDTHS = new Map(
  Object.entries(REGULAR_WIDTHS).flatMap(([width, characters]) => [...characters].map((c) => [c, Number(width)])),
);

/** Thousandths of an em for a character outside the table: wide, so that nothing is cut. */
const UNKNOWN = 1000;

/** Semibold runs wider by about this much. */
const SEMIBOLD = 1.04;

/** Width of a line of text set in Source Sans 3, px; `size` in px. Kerning is left out (below 1 %). */
export function textWidth(text: string, size: number, weight: 'normal' | 'semibold' = 'normal'): number {
  let sum = 0;
  for (const character of text) sum += WIDTHS.get(character) ?? UNKNOWN;
  return ((sum * size) / 1000) * (weight === 'semibold' ? SEMIBOLD : 1);
}

/** Breaks a text at blanks (not at those that hold a number and its unit together) into lines no wider than `width` px, where words allow it. */
export function wrap(text: string, size: number, width: number, weight: 'normal' | 'semibold' = 'normal'): string[] {
  const lines: string[] = [];
  for (const word of text.split(/[ \t\r\n]+/).filter((part) => part !== '')) {
    const last = lines.at(-1);
    const joined = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && textWidth(joined, size, weight) <= width) lines[lines.length - 1] = joined;
    else lines.push(word);
  }
  return lines;
}

/** Cuts a text to `width` px, with an ellipsis where something was cut. */
export function cut(text: string, size: number, width: number): string {
  if (textWidth(text, size) <= width) return text;
  const characters = [...text];
  while (characters.length > 1 && textWidth(`${characters.join('')}…`, size) > width) characters.pop();
  return `${characters.join('').trimEnd()}…`;
}
