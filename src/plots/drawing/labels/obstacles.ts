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
export function hits({ left, right, top, bottom }: Box, lines: readonly PixelLine[]): number {
  let count = 0;
  for (const { x, y } of lines) {
    for (let i = 1; i < x.length; i += 1) {
      // It runs for every place of every label, so it makes no array and looks at x first.
      if (!(x[i - 1]! <= right && x[i]! >= left)) continue;
      const before = y[i - 1]!;
      const after = y[i]!;
      if (Math.min(before, after) <= bottom && Math.max(before, after) >= top) count += 1;
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
