/** Where a label may stand without covering a line. */
import type { Size } from '../size.ts';

/** A box in pixels. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Whether two boxes share more than an edge. */
export function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/** A line in pixels. */
export interface PixelLine {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** Where labels stand. */
export interface Area {
  readonly width: number;
  readonly height: number;
  readonly size: Size;
  /** What a label may not cover. */
  readonly lines: readonly PixelLine[];
}

/** Length of the lines inside a box, in pieces that touch it: 0 is a free place. Judged by the bounding box of each piece. */
export function hits(box: Box, lines: readonly PixelLine[]): number {
  let count = 0;
  for (const { x, y } of lines) {
    for (let i = 1; i < x.length; i += 1) {
      const [x1, x2, y1, y2] = [x[i - 1]!, x[i]!, y[i - 1]!, y[i]!];
      if (x1 <= box.right && x2 >= box.left && Math.min(y1, y2) <= box.bottom && Math.max(y1, y2) >= box.top) count += 1;
    }
  }
  return count;
}

/** The first of the places with the fewest hits. */
export function freest<T extends { readonly box: Box }>(places: readonly T[], lines: readonly PixelLine[]): T {
  const counted = places.map((place) => ({ place, count: hits(place.box, lines) }));
  const least = Math.min(...counted.map(({ count }) => count));
  return counted.find(({ count }) => count === least)!.place;
}
