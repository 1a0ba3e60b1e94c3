/** Words beside signs: right, left, above or below, wherever they run into nothing. */
import type { Label, Rule } from '../marks.ts';
import { textWidth } from '../text-width.ts';

export interface Wanted {
  /** Middle of the sign, px. */
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly fill: string;
}

/** A rectangle, px. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Half the size of a sign with the room around it, px. */
const SIGN = 8;

/** Where labels may stand. */
export interface Area {
  readonly width: number;
  readonly height: number;
  readonly font: number;
  readonly taken: readonly Label[];
  /** Lines that a word should not run into. */
  readonly lines: readonly Rule[];
}

/** A label for each sign, in order; one that would run into a sign or another label at every side is pushed to the freest one. */
export function placeLabels(wanted: readonly Wanted[], area: Area): Label[] {
  const occupied: Box[] = [
    ...wanted.map(({ x, y }) => around(x, y)),
    ...area.taken.map((label) => boxOf(label, area.font)),
    ...area.lines.flatMap(along),
  ];
  return wanted.map((each) => {
    const candidates = sidesOf(each, area.font);
    const costs = candidates.map((label) => cost(boxOf(label, area.font), occupied, area));
    const best = candidates[costs.indexOf(Math.min(...costs))]!;
    occupied.push(boxOf(best, area.font));
    return best;
  });
}

function around(x: number, y: number): Box {
  return { left: x - SIGN, right: x + SIGN, top: y - SIGN, bottom: y + SIGN };
}

/** Small boxes along a line. */
const STEP = 6;

function along({ x, y, x2, y2 }: Rule): Box[] {
  const count = Math.max(1, Math.ceil(Math.hypot(x2 - x, y2 - y) / STEP));
  return Array.from({ length: count }, (_, k) => {
    const [atX, atY] = [x + ((k + 0.5) * (x2 - x)) / count, y + ((k + 0.5) * (y2 - y)) / count];
    return { left: atX - STEP / 2, right: atX + STEP / 2, top: atY - 1, bottom: atY + 1 };
  });
}

/** In the order of preference. */
function sidesOf({ x, y, text, fill }: Wanted, font: number): Label[] {
  const far = SIGN + font / 2 + 1;
  const common = { text, fill, size: font };
  return [
    { ...common, x: x + SIGN + 2, y, align: 'left' },
    { ...common, x: x - SIGN - 2, y, align: 'right' },
    { ...common, x, y: y - far, align: 'center' },
    { ...common, x, y: y + far, align: 'center' },
    { ...common, x: x + 2, y: y - far, align: 'left' },
    { ...common, x: x - 2, y: y - far, align: 'right' },
    { ...common, x: x + 2, y: y + far, align: 'left' },
    { ...common, x: x - 2, y: y + far, align: 'right' },
    ...[-far, far].flatMap((down): Label[] => [
      { ...common, x: x + SIGN, y: y + down, align: 'left' },
      { ...common, x: x - SIGN, y: y + down, align: 'right' },
    ]),
  ];
}

function boxOf({ x, y, text, align, size }: Label, font: number): Box {
  const width = textWidth(String(text), size ?? font);
  const left = align === 'right' ? x - width : align === 'center' ? x - width / 2 : x;
  return { left, right: left + width, top: y - size / 2, bottom: y + size / 2 };
}

/** Overlap with what stands there already, px²; leaving the drawing costs most. */
function cost(box: Box, occupied: readonly Box[], { width, height }: Area): number {
  const outside =
    Math.max(0, -box.left) + Math.max(0, box.right - width) + Math.max(0, -box.top) + Math.max(0, box.bottom - height);
  const overlaps = occupied.map((other) => {
    const across = Math.min(box.right, other.right) - Math.max(box.left, other.left);
    const down = Math.min(box.bottom, other.bottom) - Math.max(box.top, other.top);
    return across > 0 && down > 0 ? across * down : 0;
  });
  return outside * 1000 + overlaps.reduce((sum, overlap) => sum + overlap, 0);
}
