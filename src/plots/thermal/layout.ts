/** Where everything of thermal images stands, and their specification. */
import { stack } from '../drawing/config.ts';
import { indexedPng } from '../drawing/indexed-png.ts';
import { type Label, paths, images as pictures, type Rule, rules, type SignMark, signs, texts } from '../drawing/marks.ts';
import type { Size } from '../drawing/size.ts';
import { textWidth } from '../drawing/text-width.ts';
import { niceScale } from '../drawing/ticks.ts';
import type { Spec } from '../drawing/vega.ts';
import { fixed } from '../drawing/wording.ts';
import { heatColours, STEPS } from './colours.ts';
import type { Image, Place, Thermal } from './plan.ts';
import { thinned } from './thin.ts';
import { shownOf } from './words.ts';

/** What the colours mean: readings as the camera gave them; the places named in the image are put right for their finish. */
const AS_READ = ['°C, as read by the camera', '°C, as read'] as const;
/** Room of the scale bar with its numbers, and between images, px. */
const BAR = 64;
const BAR_WIDTH = 14;
const GAP = 16;
/** A single image is no wider than this, px. */
const WIDEST = 560;

interface Frame {
  readonly image: Image;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** The specification in a size: images side by side where there is room, the scale of all right of them. */
export function layOutThermal(thermal: Thermal, size: Size): Spec {
  const colours = heatColours();
  const frames = framesOf(thermal, size);
  const bottom = Math.max(...frames.map(({ top, height }) => top + height));
  const bar = barOf(thermal, size, colours, frames);
  const marks = frames.map((frame) => marksOf(frame, size));
  const panel = {
    width: size.width,
    height: bottom,
    layer: [
      pictures([...frames.map((frame) => pictureOf(frame, thermal, colours)), bar.picture]),
      paths(marks.flatMap(({ lines }) => lines)),
      rules([...marks.flatMap((each) => each.rules), ...bar.rules]),
      signs(marks.flatMap((each) => each.signs)),
      texts([...marks.flatMap(({ labels }) => labels), ...bar.labels]),
    ],
  };
  return stack([panel], size, 0);
}

function framesOf({ images }: Thermal, size: Size): Frame[] {
  const columns = size.name === 'wide' ? Math.min(2, images.length) : 1;
  const room = size.width - BAR;
  const width = Math.floor(Math.min(columns === 1 ? WIDEST : room, (room - GAP * (columns - 1)) / columns));
  const head = size.font + 10;
  const frames: Frame[] = [];
  let top = head;
  for (let first = 0; first < images.length; first += columns) {
    const row = images.slice(first, first + columns);
    const placed = row.map((image, column): Frame => {
      const height = Math.round((width * image.matrix.height) / image.matrix.width);
      return { image, left: column * (width + GAP), top, width, height };
    });
    frames.push(...placed);
    top += Math.max(...placed.map(({ height }) => height)) + head + GAP / 2;
  }
  return frames;
}

function pictureOf(
  { image, left, top, width, height }: Frame,
  { coldest, hottest }: Thermal,
  colours: ReturnType<typeof heatColours>,
) {
  const seen = thinned(image.matrix);
  const span = hottest - coldest || 1;
  const pixels = Uint8Array.from(seen.values, (value) => Math.round(((value - coldest) / span) * (STEPS - 1)));
  return { x: left, y: top, width, height, url: indexedPng(seen.width, seen.height, pixels, colours) };
}

function marksOf(frame: Frame, size: Size) {
  const { image, left, top, width, height } = frame;
  const heading =
    image.alias === ''
      ? []
      : [{ x: left, y: top - size.font / 2 - 6, text: image.alias, size: size.font, fill: 'var(--plot-ink)' }];
  const signs = image.places.map(({ at }): SignMark => {
    return { x: left + at.x * width, y: top + at.y * height, shape: 'cross', stroke: 'var(--plot-ink)', fill: 'var(--plot-paper)' };
  });
  return {
    signs,
    rules: image.places.flatMap(({ box }) => (box ? frameRules(frame, box) : [])),
    lines: image.places.flatMap(({ isotherm }) =>
      isotherm.map((line) =>
        line.map(([x, y]) => [left + (x / image.matrix.width) * width, top + (y / image.matrix.height) * height] as const),
      ),
    ),
    labels: [...heading, ...placeLabels(frame, signs, size), ...limitLabels(frame, size)],
  };
}

/** A frame that shows on dark and on light: dashes of ink on a line of paper. */
function frameRules({ left, top, width, height }: Frame, { x, y }: NonNullable<Place['box']>): Rule[] {
  const [west, east] = [left + x[0] * width, left + x[1] * width];
  const [north, south] = [top + y[0] * height, top + y[1] * height];
  const sides = [
    { x: west, x2: east, y: north, y2: north },
    { x: west, x2: east, y: south, y2: south },
    { x: west, x2: west, y: north, y2: south },
    { x: east, x2: east, y: north, y2: south },
  ];
  return [
    ...sides.map((side) => ({ ...side, stroke: 'var(--plot-paper)', width: 2 })),
    ...sides.map((side) => ({ ...side, stroke: 'var(--plot-ink)', width: 1, dash: [4, 4] })),
  ];
}

/** Beside its sign, on the side where there is room; below others that would lie under it. */
function placeLabels({ image, left, top, width, height }: Frame, signs: readonly SignMark[], size: Size): Label[] {
  const line = size.small + 3;
  const order = image.places.map((_, index) => index).sort((a, b) => signs[a]!.y - signs[b]!.y);
  const taken: { readonly x: number; readonly x2: number; readonly y: number }[] = [];
  return order.map((index) => {
    const [place, sign] = [image.places[index]!, signs[index]!];
    const text = `${place.title}${place.box ? ', hottest' : ''} ${shownOf(place.surface)}`;
    const wide = textWidth(text, size.small);
    const right = sign.x + 10 + wide <= left + width;
    const x = right ? sign.x + 10 : Math.max(left + wide, sign.x - 10);
    const [from, to] = right ? [x, x + wide] : [x - wide, x];
    let y = Math.min(Math.max(sign.y, top + line / 2), top + height - line / 2);
    while (taken.some((other) => Math.abs(other.y - y) < line && other.x < to && other.x2 > from)) y += 2;
    taken.push({ x: from, x2: to, y });
    return { x, y, text, size: size.small, fill: 'var(--plot-ink)', align: right ? ('left' as const) : ('right' as const) };
  });
}

/** Below the upper end of the longest line of each region. */
function limitLabels({ image, left, top, width, height }: Frame, size: Size): Label[] {
  return image.places.flatMap(({ isotherm }): Label[] => {
    const [longest] = isotherm.toSorted((a, b) => b.length - a.length);
    const highest = longest?.reduce((most, point) => (point[1] < most[1] ? point : most));
    if (!highest) return [];
    const x = left + (highest[0] / image.matrix.width) * width;
    const y = top + (highest[1] / image.matrix.height) * height + size.small;
    return [{ x, y, text: 'touch limit', size: size.small, fill: 'var(--plot-limit)', align: 'center' }];
  });
}

/** The scale: colours from cold to hot, with numbers, beside the first row of images. */
function barOf({ coldest, hottest }: Thermal, size: Size, colours: ReturnType<typeof heatColours>, frames: readonly Frame[]) {
  const { top, height } = frames[0]!;
  const row = frames.filter((frame) => frame.top === top);
  const x = Math.max(...row.map(({ left, width }) => left + width)) + GAP;
  const title = barTitle(row.at(-1)!, x, size);
  const pixels = Uint8Array.from({ length: STEPS }, (_, row) => STEPS - 1 - row);
  const { ticks, decimals } = niceScale(coldest, hottest, size.valueTicks);
  const within = ticks.filter((tick) => tick >= coldest && tick <= hottest);
  const yOf = (value: number) => top + (1 - (value - coldest) / (hottest - coldest || 1)) * height;
  return {
    picture: { x, y: top, width: BAR_WIDTH, height, url: indexedPng(1, STEPS, pixels, colours) },
    rules: within.map(
      (tick): Rule => ({ x: x + BAR_WIDTH, x2: x + BAR_WIDTH + 4, y: yOf(tick), y2: yOf(tick), stroke: 'var(--plot-soft)' }),
    ),
    labels: [
      ...within.map((tick): Label => {
        return { x: x + BAR_WIDTH + 7, y: yOf(tick), text: fixed(tick, decimals), size: size.small, fill: 'var(--plot-soft)' };
      }),
      { ...title, y: top - size.font / 2 - 6, size: size.small, fill: 'var(--plot-ink)' },
    ],
  };
}

/** From the bar on where there is room, else up to the right edge of the drawing, in as many words as fit beside the heading of the image. */
function barTitle({ image, left }: Frame, x: number, size: Size): Pick<Label, 'x' | 'text' | 'align'> {
  const [whole] = AS_READ;
  if (x + textWidth(whole, size.small) <= size.width) return { x, text: whole, align: 'left' };
  const room = size.width - left - (image.alias === '' ? 0 : textWidth(image.alias, size.font) + GAP);
  const text = AS_READ.find((words) => textWidth(words, size.small) <= room) ?? AS_READ[1];
  return { x: size.width, text, align: 'right' };
}
