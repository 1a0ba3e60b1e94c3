/** Lines are labelled where they end: names in the right margin, moved apart, led to their line where they had to move. */
import { dodge } from './dodge.ts';
import type { Label, Rule } from './marks.ts';
import { hits, type PixelLine } from './obstacles.ts';
import { inkOf } from './palette.ts';
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

/** Labels and leaders of the lines of one panel. A line that ends early is labelled at its end where that place is free. */
export function endLabels(
  ends: readonly LineEnd[],
  area: { readonly width: number; readonly height: number; readonly size: Size; readonly lines: readonly PixelLine[] },
): { labels: Label[]; leaders: Rule[] } {
  const told = ends.map((end) => ({ end, lines: linesOf(end.text, area.size) }));
  const early = told.filter((each) => standsFree(each.end, each.lines, area));
  const late = told.filter((each) => !early.includes(each));
  const places = dodge(
    late.map(({ end }) => end.y),
    late.map(({ lines }) => lines.length * (area.size.font + 2)),
    -area.size.font / 2,
    area.height + area.size.font / 2,
  );
  return {
    labels: [
      ...early.map(({ end, lines }) => label(lines, end.x + CLEAR, end.y, end.k, area.size)),
      ...late.map(({ end, lines }, i) => label(lines, area.width + LEADER, places[i]!, end.k, area.size)),
    ],
    leaders: late.flatMap(({ end }, i) => leader(end, places[i]!, area.width)),
  };
}

/** Distance of a label from the end of its line inside the data area, px. */
const CLEAR = 7;

function standsFree(
  end: LineEnd,
  lines: readonly string[],
  area: { readonly width: number; readonly size: Size; readonly lines: readonly PixelLine[] },
): boolean {
  const { font } = area.size;
  const right = end.x + CLEAR + Math.max(...lines.map((line) => textWidth(line, font)));
  const half = (lines.length * (font + 2)) / 2;
  if (right > area.width) return false;
  return hits({ left: end.x + CLEAR / 2, right, top: end.y - half, bottom: end.y + half }, area.lines) === 0;
}

function label(lines: readonly string[], x: number, y: number, k: number, size: Size): Label {
  const first = y - ((lines.length - 1) * (size.font + 1)) / 2;
  return { x, y: first, text: lines.length === 1 ? lines[0]! : lines, size: size.font, fill: inkOf(k) };
}

/** A thin line from the end of the line to its label, where the label does not simply follow it. */
function leader(end: LineEnd, y: number, width: number): Rule[] {
  if (Math.abs(end.y - y) < 4 && width - end.x < 8) return [];
  return [{ x: end.x + 3, y: end.y, x2: width + LEADER - 3, y2: y, stroke: inkOf(end.k), width: 0.75 }];
}
