/** Lines are labelled where they end: names in the right margin, moved apart, led to their line where they had to move. */
import { dodge } from './dodge.ts';
import { inkOf, type Label, type Rule } from './marks.ts';
import type { Size } from './size.ts';
import { cut, textWidth, wrap } from './text-width.ts';

/** The end of a line, px from the data area's upper left corner. */
export interface LineEnd {
  readonly x: number;
  readonly y: number;
  /** Style of the line, from 0. */
  readonly k: number;
  readonly text: string;
}

/** Free stretch between the data area and its labels, px; a leader crosses it. */
const LEADER = 12;

/** A label takes at most this share of the drawing. */
const WIDEST = 0.28;

/** Width of the right margin that the labels of all panels need, px. */
export function marginFor(texts: readonly string[], size: Size): number {
  const widest = Math.max(0, ...texts.flatMap((text) => linesOf(text, size).map((line) => textWidth(line, size.font))));
  return widest === 0 ? 8 : Math.ceil(widest + LEADER + 2);
}

function linesOf(text: string, size: Size): string[] {
  const limit = WIDEST * size.width;
  return wrap(text, size.font, limit).map((line) => cut(line, size.font, limit));
}

/** Labels and leaders of the lines of one panel. */
export function endLabels(
  ends: readonly LineEnd[],
  width: number,
  height: number,
  size: Size,
): { labels: Label[]; leaders: Rule[] } {
  const lines = ends.map(({ text }) => linesOf(text, size));
  const sizes = lines.map((each) => each.length * (size.font + 2));
  const places = dodge(
    ends.map(({ y }) => y),
    sizes,
    0,
    height,
  );
  const labels = ends.map(({ k }, i) => label(lines[i]!, width + LEADER, places[i]!, k, size));
  const leaders = ends.flatMap((end, i) => leader(end, places[i]!, width));
  return { labels, leaders };
}

function label(lines: readonly string[], x: number, y: number, k: number, size: Size): Label {
  const first = y - ((lines.length - 1) * (size.font + 1)) / 2;
  return { x, y: first, text: lines.length === 1 ? lines[0]! : lines, size: size.font, fill: inkOf(k) };
}

/** A thin line from the end of the line to its label, where the label does not simply follow it. */
function leader(end: LineEnd, y: number, width: number): Rule[] {
  if (Math.abs(end.y - y) < 2 && width - end.x < 4) return [];
  return [{ x: end.x + 3, y: end.y, x2: width + LEADER - 3, y2: y, stroke: inkOf(end.k), width: 0.75 }];
}
