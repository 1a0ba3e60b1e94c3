/** Where everything of a plot of scores stands, and its specification. */
import { isPresent, type PresentFigure } from '../../figures/figure.ts';
import { differs, intervalOf, logSpreads } from '../data/plotted-comparison.ts';
import { stack } from '../drawing/config.ts';
import { type Dot, dotPanel, placeOn } from '../drawing/dot-panel.ts';
import { rangeOf } from '../drawing/dots.ts';
import { freest, type PixelLine } from '../drawing/labels/obstacles.ts';
import type { Label, Rule } from '../drawing/marks.ts';
import { inkOf, ofRun } from '../drawing/palette.ts';
import type { Size } from '../drawing/size.ts';
import { cut, textWidth, wrap } from '../drawing/text-width.ts';
import { logScale, type Scale } from '../drawing/ticks.ts';
import type { Spec } from '../drawing/vega.ts';
import type { ScoreRow, Scores } from './plan.ts';

/** Distance of the runs of a test, px: in the first row, where they are named, and in the others. */
const NAMED = 18;
const PLAIN = 11;
/** Room above and below the runs of a test, px. */
const PAD = 7;
/** Titles of tests take at most this share of a wide drawing. */
const WIDEST = 0.3;
/** Free share of the axis beyond the outermost ends. */
const MARGIN = 0.04;
/** A run's name takes at most this share of the drawing; half the size of a sign, px. */
const NAME = 0.28;
const SIGN = 5;
/** Distance of a run's name from its sign or whisker, px. */
const BESIDE = 8;

/** A row with its place. */
interface Placed {
  readonly row: ScoreRow;
  readonly top: number;
  readonly height: number;
  /** Distance of its runs, and the middle of the first, px. */
  readonly pitch: number;
  readonly first: number;
  readonly title: readonly string[];
}

/** The specification in a size: a row for each test, its runs in order; runs are named in the first row. */
export function layOutScores({ rows, reference }: Scores, size: Size): Spec {
  const wide = size.name === 'wide';
  const placed = place(rows, size);
  const left = wide
    ? Math.ceil(Math.max(...placed.flatMap(({ title }) => title.map((line) => textWidth(line, size.font)))) + 14)
    : 8;
  const right = 12;
  const width = size.width - left - right;
  const x = axisOf(rows, size);
  const height = placed.at(-1)!.top + placed.at(-1)!.height;
  const xOf = placeOn(x, width);
  const frame = { size, left, width, xOf };
  return stack(
    [
      dotPanel({
        left,
        right,
        width,
        height,
        x,
        xTitle: 'Speedup (logarithmic)',
        neutral: 1,
        upright: wide
          ? [[0, height]]
          : placed.map(({ first, pitch, top, height: high }) => [first - pitch / 2 - 3, top + high] as const),
        dots: placed.flatMap(dotsOf),
        rules: placed
          .slice(1)
          .map(({ top }): Rule => ({ x: -left, x2: width + right, y: top, y2: top, stroke: 'var(--plot-grid)' })),
        labels: [
          { x: xOf(1), y: -size.small / 2 - 3, text: reference.alias, size: size.small, fill: 'var(--plot-soft)', align: 'center' },
          ...placed.flatMap((each) => titleOf(each, frame)),
          ...namesOf(placed[0]!, frame),
          ...placed.flatMap((each) => absentOf(each, frame)),
        ],
      }),
    ],
    size,
    0,
  );
}

function place(rows: readonly ScoreRow[], size: Size): Placed[] {
  const wide = size.name === 'wide';
  let top = 0;
  return rows.map((row, index) => {
    const pitch = index === 0 ? NAMED : PLAIN;
    const title = wide
      ? wrap(row.title, size.font, WIDEST * size.width).map((line) => cut(line, size.font, WIDEST * size.width))
      : [row.title];
    const head = wide ? 0 : size.font + 5;
    const signs = row.scores.length * pitch;
    const height = head + Math.max(signs, wide ? title.length * (size.font + 3) : 0) + 2 * PAD;
    const first = top + head + (height - head - signs) / 2 + pitch / 2;
    const placed = { row, top, height, pitch, first, title };
    top += height;
    return placed;
  });
}

function axisOf(rows: readonly ScoreRow[], size: Size): Scale {
  const spreads = logSpreads(rows.flatMap(({ scores }) => scores.map(({ figure }) => figure)));
  const [low, high] = rangeOf(spreads, 0);
  const margin = MARGIN * Math.max(high - low, 0.02);
  return logScale(Math.exp(low - margin), Math.exp(high + margin), size.timeTicks);
}

function dotsOf({ row, first, pitch }: Placed): Dot[] {
  return row.scores.flatMap(({ figure, k }, index) => {
    if (!isPresent(figure)) return [];
    const y = first + index * pitch;
    return [{ value: figure.quantity.value, interval: intervalOf(figure), y, k, filled: differs(figure) }];
  });
}

interface Frame {
  readonly size: Size;
  readonly left: number;
  readonly width: number;
  readonly xOf: (ratio: number) => number;
}

function titleOf({ title, top, height }: Placed, { size, left }: Frame): Label[] {
  const ink = { size: size.font, fill: 'var(--plot-ink)' };
  if (size.name !== 'wide')
    return [{ ...ink, x: -left, y: top + PAD + size.font / 2, text: cut(title[0]!, size.font, size.width) }];
  const first = top + height / 2 - ((title.length - 1) * (size.font + 2)) / 2;
  return title.map((text, i) => ({ ...ink, x: -left, y: first + i * (size.font + 2), text }));
}

/** Runs are named once, beside their signs in the first row; right of the whisker, or left of it where there is more room. */
function namesOf({ row, first, pitch }: Placed, { size, width, xOf }: Frame): Label[] {
  return row.scores.flatMap(({ alias, k, figure }, index): Label[] => {
    if (!isPresent(figure)) return [];
    const [from, to] = stretchOf(figure, xOf, width);
    const text = cut(alias, size.font, NAME * size.width);
    const common = { y: first + index * pitch, text, size: size.font, fill: inkOf(k) };
    const rightward = to + BESIDE + textWidth(text, size.font) <= width || width - to >= from;
    return [rightward ? { ...common, x: to + BESIDE } : { ...common, x: from - BESIDE, align: 'right' }];
  });
}

/** From where to where a sign and its whisker reach, px. */
function stretchOf(figure: PresentFigure, xOf: Frame['xOf'], width: number): [from: number, to: number] {
  const at = xOf(figure.quantity.value);
  const [low, high] = intervalOf(figure) ?? [figure.quantity.value, figure.quantity.value];
  return [Math.min(at - SIGN, low > 0 ? Math.max(0, xOf(low)) : 0), Math.max(at + SIGN, Math.min(width, xOf(high)))];
}

/** Runs without a figure of the test, named at whichever end of the row is free; the method says why. */
function absentOf({ row, first, pitch }: Placed, { size, width, xOf }: Frame): Label[] {
  const font = Math.min(size.small, pitch + 1);
  const lines = row.scores.flatMap(({ figure }, index): PixelLine[] => {
    if (!isPresent(figure)) return [];
    const y = first + index * pitch;
    return [{ x: stretchOf(figure, xOf, width), y: [y, y] }];
  });
  return row.scores.flatMap(({ alias, figure, k }, index): Label[] => {
    if (isPresent(figure)) return [];
    const text = cut(`${alias} absent`, font, width / 2);
    const long = textWidth(text, font);
    const y = first + index * pitch;
    const places = [width - long - 4, 4].map((x) => ({
      x,
      box: { left: x, right: x + long, top: y - font / 2, bottom: y + font / 2 },
    }));
    return [{ x: freest(places, lines).x, y, text, size: font, fill: ofRun('var(--plot-soft)', k) }];
  });
}
