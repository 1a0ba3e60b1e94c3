/** A plane with two axes of values: what charts of one figure against another have in common. */
import { whisker } from './dots.ts';
import { bands, empty, type Label, type Rule, rules, type SignMark, signs, texts } from './marks.ts';
import type { Size } from './size.ts';
import { textWidth } from './text-width.ts';
import { pixelOf, type Scale } from './ticks.ts';
import { fixed } from './wording.ts';

/** Room to the right of the data area, px: half the name of the last tick stands there. */
function rightOf(size: Size): number {
  return size.name === 'still' ? 16 : 10;
}

export interface Plane {
  /** Room for the ticks of the upright axis, px. */
  readonly left: number;
  /** Of the data area, px. */
  readonly width: number;
  readonly height: number;
  readonly x: Scale;
  readonly y: Scale;
  /** Of values as their axis shows them, px. */
  readonly xOf: (value: number) => number;
  readonly yOf: (value: number) => number;
}

/** The plane of two axes in a size, `height` px high. */
export function planeOf(x: Scale, y: Scale, height: number, size: Size): Plane {
  const left = Math.ceil(Math.max(...y.ticks.map((tick) => textWidth(fixed(tick, y.decimals), size.small))) + 6);
  const width = size.width - left - rightOf(size);
  return {
    left,
    width,
    height,
    x,
    y,
    xOf: (value) => ((value - x.from) / (x.to - x.from)) * width,
    yOf: (value) => pixelOf(value, y, height),
  };
}

type Interval = readonly [from: number, to: number];

/** The intervals of a point, a whisker each, in px; null where there is none. */
export function crossed(
  place: { readonly x: number; readonly y: number },
  { across, along }: { readonly across: Interval | null; readonly along: Interval | null },
  k: number,
  { width, height }: Plane,
): Rule[] {
  return [
    ...(across ? whisker(across, place.y, [0, width], { k }) : []),
    ...(along ? whisker(along, place.x, [0, height], { k, vertical: true }) : []),
  ];
}

/** The panel of a plane, with what is drawn on it. */
export function planePanel(
  { left, width, height, x, y }: Plane,
  titles: { readonly x: string; readonly y: string },
  drawn: {
    readonly rules: readonly Rule[];
    readonly signs: readonly SignMark[];
    readonly area: number;
    readonly labels: readonly Label[];
  },
  size: Size,
) {
  const heading: Label = { x: -left, y: -size.font / 2 - 8, text: titles.y, size: size.font, fill: 'var(--plot-ink)' };
  return {
    width,
    height,
    layer: [
      bands([{ x: -left, x2: width + rightOf(size), y: 0, y2: 0 }]),
      empty({ x, y, xTitle: titles.x, grid: 'y' }),
      rules(drawn.rules),
      signs(drawn.signs, drawn.area),
      texts([heading, ...drawn.labels]),
    ],
  };
}
