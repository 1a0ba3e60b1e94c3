/** Where everything of a plot of scaling stands, and its specification. */
import { differs, intervalOf, spreadsOf } from '../data/plotted-comparison.ts';
import { stack } from '../drawing/config.ts';
import { rangeOf, sign } from '../drawing/dots.ts';
import { type Box, freest, type PixelLine } from '../drawing/labels/obstacles.ts';
import { placeLabels } from '../drawing/labels/sign-labels.ts';
import type { Label, Rule, SignMark } from '../drawing/marks.ts';
import { inkOf, ofRun } from '../drawing/palette.ts';
import { crossed, type Plane, planeOf, planePanel } from '../drawing/plane.ts';
import type { Size } from '../drawing/size.ts';
import { cut, textWidth } from '../drawing/text-width.ts';
import { niceScale, type Scale } from '../drawing/ticks.ts';
import type { Spec } from '../drawing/vega.ts';
import type { PowerLaw, Scaling, ScalingPoint } from './plan.ts';
import { lawText } from './words.ts';

/** Free share of an axis beyond the outermost ends. */
const MARGIN = 0.06;
/** An axis spans at least so much: equal runs do not fill it with their noise. */
const LEAST = 0.05;
/** An alias takes at most this share of the drawing. */
const WIDEST = 0.3;
/** Pieces of the curve. */
const PIECES = 48;

interface Frame extends Plane {
  readonly size: Size;
}

/** The specification in a size. */
export function layOutScaling(scaling: Scaling, size: Size): Spec {
  const frame = frameOf(scaling.points, size);
  const one = sign(frame.xOf(1), frame.yOf(1), scaling.reference.k, true);
  const marks = scaling.points.map(({ clock, speedup, k }) =>
    sign(frame.xOf(clock.quantity.value), frame.yOf(speedup.quantity.value), k, differs(speedup)),
  );
  const whiskers = scaling.points.flatMap((point) => whiskersOf(point, frame));
  const linear = linearLine(frame);
  const curve = scaling.law ? curveOf(scaling.law, scaling.points, frame) : [];
  const short = (alias: string) => cut(alias, size.font, WIDEST * size.width);
  const named = namesOfLines(scaling, { linear, curve, others: whiskers, signs: [one, ...marks] }, frame);
  const names = placeLabels(
    [
      { ...one, text: short(scaling.reference.alias), fill: inkOf(scaling.reference.k) },
      ...scaling.points.map(({ alias, k }, i) => ({ ...marks[i]!, text: short(alias), fill: inkOf(k) })),
    ],
    { width: frame.width, height: size.height, font: size.font, taken: named, lines: [...linear, ...curve, ...whiskers] },
  );
  const panel = planePanel(
    frame,
    { x: 'Clock ratio (measured)', y: 'Speedup' },
    { rules: [...linear, ...curve, ...whiskers], signs: [one, ...marks], area: SIGN, labels: [...named, ...names] },
    size,
  );
  return stack([panel], size, 0);
}

/** Area of a sign, px². */
const SIGN = 70;

function frameOf(points: readonly ScalingPoint[], size: Size): Frame {
  const spreads = (which: 'clock' | 'speedup') => spreadsOf(points.map((point) => point[which]));
  const x = padded(rangeOf(spreads('clock'), 1), size.timeTicks);
  const y = padded(rangeOf(spreads('speedup'), 1), size.valueTicks);
  return { size, ...planeOf(x, y, size.height, size) };
}

function padded([low, high]: readonly [number, number], ticks: number): Scale {
  const span = Math.max(high - low, LEAST);
  return niceScale(Math.max(0, low - MARGIN * span), high + MARGIN * span, ticks);
}

function whiskersOf({ clock, speedup, k }: ScalingPoint, frame: Frame): Rule[] {
  const { xOf, yOf } = frame;
  const [across, along] = [intervalOf(clock), intervalOf(speedup)];
  return crossed(
    { x: xOf(clock.quantity.value), y: yOf(speedup.quantity.value) },
    { across: across && [xOf(across[0]), xOf(across[1])], along: along && [yOf(along[0]), yOf(along[1])] },
    k,
    frame,
  );
}

/** Speed in proportion to the clock: y = x as far as both axes go. */
function linearLine({ x, y, xOf, yOf }: Frame): Rule[] {
  const [from, to] = [Math.max(x.from, y.from), Math.min(x.to, y.to)];
  return [{ x: xOf(from), y: yOf(from), x2: xOf(to), y2: yOf(to), stroke: 'var(--plot-soft)', width: 1.25, dash: [5, 4] }];
}

/** The curve is fitted to all runs: it comes with the last of them. */
function ofLast(ink: string, points: readonly ScalingPoint[]): string {
  return ofRun(ink, points.at(-1)!.k);
}

/** The power law over the clocks that were measured, the reference's included. */
function curveOf({ coefficient, exponent }: PowerLaw, points: readonly ScalingPoint[], { xOf, yOf }: Frame): Rule[] {
  const clocks = [1, ...points.map(({ clock }) => clock.quantity.value)];
  const [from, to] = [Math.min(...clocks), Math.max(...clocks)];
  const at = (piece: number) => from + ((to - from) * piece) / PIECES;
  const height = (x: number) => yOf(coefficient * x ** exponent.quantity.value);
  return Array.from({ length: PIECES }, (_, i) => ({
    x: xOf(at(i)),
    y: height(at(i)),
    x2: xOf(at(i + 1)),
    y2: height(at(i + 1)),
    stroke: ofLast('var(--plot-soft)', points),
    width: 1.5,
  }));
}

interface Obstacles {
  readonly linear: readonly Rule[];
  readonly curve: readonly Rule[];
  readonly others: readonly Rule[];
  readonly signs: readonly SignMark[];
}

/** What the line and the curve are, beside them where nothing else runs. */
function namesOfLines(scaling: Scaling, { linear, curve, others, signs: marks }: Obstacles, frame: Frame): Label[] {
  const lines = [...linear, ...curve, ...others].map(({ x, y, x2, y2 }): PixelLine => ({ x: [x, x2], y: [y, y2] }));
  const around = marks.map(({ x, y }): PixelLine => ({ x: [x - 8, x + 8], y: [y - 8, y + 8] }));
  const grid = frame.y.ticks.map((tick): PixelLine => ({ x: [0, frame.width], y: [frame.yOf(tick), frame.yOf(tick)] }));
  const all = [...lines, ...around, ...grid];
  const first = nameOf('linear', linear, 'above', all, frame);
  const law = lawText(scaling);
  if (law === '') return [first];
  const box = boxOf(first);
  const taken: PixelLine = { x: [box.left, box.right], y: [box.top, box.bottom] };
  const name = nameOf(law, curve, 'below', [...all, taken], frame);
  return [first, { ...name, fill: ofLast(name.fill, scaling.points) }];
}

/** Shares of a line at which its name may stand, from its end. */
const SHARES = [0.97, 0.85, 0.7, 0.55, 0.4, 0.25];
/** Distances of a name from its line, px: along it, and across in the order of preference. */
const BESIDE = 9;
const SHIFTS = [5, 9, 14, 20];

function nameOf(
  text: string,
  line: readonly Rule[],
  side: 'above' | 'below',
  lines: readonly PixelLine[],
  { size, width }: Frame,
): Label {
  const long = textWidth(text, size.small);
  const places = SHARES.flatMap((share) => {
    const { x, y } = pointOn(line, share);
    const label = (left: number, at: number): Label => ({ x: left, y: at, text, size: size.small, fill: 'var(--plot-soft)' });
    const beside = side === 'above' ? x - long - BESIDE : x + BESIDE;
    return SHIFTS.map((shift) => label(beside, side === 'above' ? y - shift : y + shift)).map((each) => ({
      label: each,
      box: boxOf(each),
    }));
  });
  const inside = places.filter(({ box }) => box.left >= 0 && box.right <= width && box.bottom <= size.height && box.top >= 0);
  return freest(inside.length > 0 ? inside : places, lines).label;
}

function pointOn(line: readonly Rule[], share: number): { x: number; y: number } {
  const at = share * line.length;
  const piece = line[Math.min(Math.floor(at), line.length - 1)]!;
  const within = at - Math.min(Math.floor(at), line.length - 1);
  return { x: piece.x + (piece.x2 - piece.x) * within, y: piece.y + (piece.y2 - piece.y) * within };
}

function boxOf({ x, y, text, size }: Label): Box {
  return { left: x - 2, right: x + textWidth(String(text), size) + 2, top: y - size / 2, bottom: y + size / 2 };
}
