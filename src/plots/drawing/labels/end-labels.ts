/** Lines are labelled where they end: names in the right margin, moved apart, led to their line where they had to move. */

import type { Label, Rule } from '../marks.ts';
import { inkOf } from '../palette.ts';
import type { Size } from '../size.ts';
import { cut, textWidth, wrap } from '../text-width.ts';
import { dodge } from './dodge.ts';
import { type Area, type Box, hits, overlap } from './obstacles.ts';

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

/** Labels and leaders of the lines of one panel. A line that ends early is labelled at its end where no line and no other label is; `covered`: where words stand already. */
export function endLabels(
  ends: readonly LineEnd[],
  area: Area,
  covered: readonly Box[] = [],
): { labels: Label[]; leaders: Rule[] } {
  const told = ends.map((end) => ({ end, lines: linesOf(end.text, area.size) }));
  const taken: Box[] = [...covered];
  const early = new Map(
    told.flatMap((each) => {
      const box = freeBox(each.end, each.lines, area, taken);
      if (box === undefined) return [];
      taken.push(box);
      return [[each, (box.top + box.bottom) / 2]] as const;
    }),
  );
  const late = told.filter((each) => !early.has(each));
  const places = dodge(
    late.map(({ end }) => end.y),
    late.map(({ lines }) => lines.length * (area.size.font + 2)),
    -area.size.font / 2,
    area.height + area.size.font / 2,
  );
  return {
    labels: [
      ...[...early].map(([{ end, lines }, y]) => label(lines, end.x + CLEAR, y, end.k, area.size)),
      ...late.map(({ end, lines }, i) => label(lines, area.width + LEADER, places[i]!, end.k, area.size)),
    ],
    leaders: late.flatMap(({ end }, i) => leader(end, places[i]!, area.width)),
  };
}

/** Distance of a label from the end of its line inside the data area, px. */
const CLEAR = 7;

/** Where a label is tried, in its font's sizes above or below the end of its line. */
const TRIED = [0, -0.9, 0.9];

/** What a label right behind the end of its line covers, where nothing else is: headings stand above the data area. Undefined where there is no such place. */
function freeBox(end: LineEnd, lines: readonly string[], area: Area, taken: readonly Box[]): Box | undefined {
  const { font } = area.size;
  const half = (lines.length * (font + 2)) / 2;
  const right = end.x + CLEAR + Math.max(...lines.map((line) => textWidth(line, font)));
  if (right > area.width) return undefined;
  return TRIED.map((shift) => end.y + shift * font)
    .map((y): Box => ({ left: end.x + CLEAR / 2, right, top: y - half, bottom: y + half }))
    .filter((box) => box.top >= -font / 2 && box.bottom <= area.height + font / 4)
    .find((box) => hits(box, area.lines) === 0 && !taken.some((other) => overlap(box, other)));
}

function label(lines: readonly string[], x: number, y: number, k: number, size: Size): Label {
  const first = y - ((lines.length - 1) * (size.font + 1)) / 2;
  return { x, y: first, text: lines.length === 1 ? lines[0]! : lines, size: size.font, fill: inkOf(k) };
}

/** From here on a leader crosses what could be data, px. */
const FAR = 8;

/** A thin line from the end of the line to its label, where the label does not simply follow it: dotted where it could be taken for readings. */
function leader(end: LineEnd, y: number, width: number): Rule[] {
  const far = width - end.x >= FAR;
  if (Math.abs(end.y - y) < 4 && !far) return [];
  const rule = { x: end.x + 3, y: end.y, x2: width + LEADER - 3, y2: y, stroke: inkOf(end.k), width: 0.75 };
  return [far ? { ...rule, dash: [1, 3] } : rule];
}
