/** Lines are labelled where they run apart: above or below themselves, on the stretch where no other line is near. */
import type { Label } from '../marks.ts';
import { inkOf } from '../palette.ts';
import { textWidth } from '../text-width.ts';
import { type Area, type Box, hits, overlap, type PixelLine } from './obstacles.ts';

export interface NamedLine {
  readonly line: PixelLine;
  /** Style, from 0. */
  readonly k: number;
  /** Wordings, the fullest first: the first that finds a place is taken. */
  readonly texts: readonly string[];
}

/** Places tried along a line, and what of the ends is left alone, as shares of the width. */
const TRIED = 28;
const FIRST = 0.16;
/** Distance of a label from its line, px, and how much that line may rise or fall beside it, in heights of the type. */
const CLEAR = 5;
const SLOPE = 1.1;
/** A label is nearer to its own line than to any other, by so much, px. */
const NEARER = 6;
/** Farther from other lines than this is no better, px. */
const ENOUGH = 36;

interface Place {
  readonly box: Box;
  readonly worth: number;
}

/** A label for each line, on a stretch where it cannot be taken for another's; null where one finds no such place. `covered`: where words stand already. */
export function lineLabels(lines: readonly NamedLine[], area: Area, covered: readonly Box[] = []): Label[] | null {
  const taken = [...covered];
  const labels: Label[] = [];
  for (const named of lines) {
    const others = lines.filter((other) => other !== named).map(({ line }) => line);
    const found = named.texts
      .map((text) => ({ text, place: placeOf(named.line, text, others, area, taken) }))
      .find(({ place }) => place !== null);
    if (!found?.place) return null;
    const { left, right, top, bottom } = found.place.box;
    taken.push(found.place.box);
    const x = (left + right) / 2;
    labels.push({ x, y: (top + bottom) / 2, text: found.text, size: area.size.font, fill: inkOf(named.k), align: 'center' });
  }
  return labels;
}

function placeOf(line: PixelLine, text: string, others: readonly PixelLine[], area: Area, taken: readonly Box[]): Place | null {
  const { font } = area.size;
  const long = textWidth(text, font);
  const room = area.width - long;
  let best: Place | null = null;
  for (let i = 0; i <= TRIED; i += 1) {
    const left = FIRST * area.width + (i / TRIED) * (room - FIRST * area.width - 4);
    const range = rangeIn(line, left - 2, left + long + 2);
    if (left < 0 || range === null || range.high - range.low > SLOPE * font) continue;
    for (const top of [range.low - CLEAR - font, range.high + CLEAR]) {
      const box: Box = { left: left - 4, right: left + long + 4, top, bottom: top + font };
      const worth = worthOf(box, line, others, { range, area, taken }) - Math.abs(i / TRIED - 0.6) * 4;
      if (worth > 0 && (best === null || worth > best.worth)) best = { box, worth };
    }
  }
  return best;
}

/** How far the label is from other lines, up to what is enough; below zero where it cannot stand there. */
function worthOf(
  box: Box,
  own: PixelLine,
  others: readonly PixelLine[],
  { range, area, taken }: { readonly range: Range; readonly area: Area; readonly taken: readonly Box[] },
): number {
  if (box.top < 1 || box.bottom > area.height - 1) return -1;
  if (taken.some((other) => overlap(box, other))) return -1;
  if (hits({ ...box, top: box.top + 1, bottom: box.bottom - 1 }, [own, ...area.lines]) > 0) return -1;
  const mine = Math.max(box.top - range.low, range.low - box.bottom, CLEAR);
  const distances = others.map((line) => {
    const across = rangeIn(line, box.left, box.right);
    return across === null ? ENOUGH : Math.max(box.top - across.high, across.low - box.bottom);
  });
  const nearest = Math.min(ENOUGH, ...distances);
  return nearest < CLEAR + NEARER || nearest < Math.min(mine, ENOUGH) * 0.6 ? -1 : nearest;
}

interface Range {
  readonly low: number;
  readonly high: number;
}

/** Least and greatest height of a line between two places along; null where it does not reach there. */
function rangeIn({ x, y }: PixelLine, from: number, to: number): Range | null {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 1; i < x.length; i += 1) {
    if (x[i]! < from || x[i - 1]! > to) continue;
    low = Math.min(low, y[i - 1]!, y[i]!);
    high = Math.max(high, y[i - 1]!, y[i]!);
  }
  return high < low ? null : { low, high };
}
