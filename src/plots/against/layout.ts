/** Where everything of a plot of one figure against another stands, and its specification. */
import { intervalOf, valueText } from '../data/plotted-comparison.ts';
import { stack } from '../drawing/config.ts';
import { sign } from '../drawing/dots.ts';
import { placeLabels } from '../drawing/labels/sign-labels.ts';
import type { Label, Rule } from '../drawing/marks.ts';
import { inkOf, ofRun } from '../drawing/palette.ts';
import { crossed, type Plane, planeOf, planePanel } from '../drawing/plane.ts';
import type { Size } from '../drawing/size.ts';
import { cut } from '../drawing/text-width.ts';
import { niceScale, type Scale } from '../drawing/ticks.ts';
import type { Spec } from '../drawing/vega.ts';
import { inDisplay, withUnit } from '../drawing/wording.ts';
import type { Against, AgainstAxis, AgainstPoint } from './plan.ts';
import { capital } from './words.ts';

/** Free share of an axis beyond the outermost ends; along there must be room for words behind the last sign. */
const BESIDE = 0.08;
const ABOVE = 0.12;
/** Height of the data area, px: low, since what counts lies along. */
const HEIGHT = { wide: 210, narrow: 220, still: null } as const;
/** Area of a sign, px². */
const SIGN = 80;
/** Half the stroke of a set clock, px, and how far it must lie from the sign to be drawn. */
const SET = 9;
const APART = 5;
/** A name takes at most this share of the drawing. */
const WIDEST = 0.4;

/** The specification in a size. */
export function layOutAgainst(against: Against, size: Size): Spec {
  const frame = frameOf(against, size);
  const places = against.points.map(({ x, y, k }) => sign(frame.xOf(x.quantity.value), frame.yOf(y.quantity.value), k, true));
  const whiskers = against.points.flatMap((point) => whiskersOf(point, frame));
  const set = against.points.flatMap((point, i) => setMark(point, places[i]!, frame, size));
  const path = places.slice(1).map(
    (place, i): Rule => ({
      x: places[i]!.x,
      y: places[i]!.y,
      x2: place.x,
      y2: place.y,
      stroke: ofRun('var(--plot-soft)', against.points[i + 1]!.k),
      width: 1.25,
      dash: [1, 4],
    }),
  );
  const taken = set.flatMap(({ label }) => (label ? [label] : []));
  const names = placeLabels(
    against.points.map((point, i) => ({
      ...places[i]!,
      text: cut(wordsOf(point, size), size.font, WIDEST * size.width),
      fill: inkOf(point.k),
    })),
    {
      width: frame.width,
      height: frame.height,
      font: size.font,
      taken,
      lines: [...path, ...whiskers, ...set.flatMap(({ rules: drawn }) => drawn)],
    },
  );
  const panel = planePanel(
    frame,
    { x: titleOf(against.x), y: titleOf(against.y) },
    {
      rules: [...path, ...whiskers, ...set.flatMap(({ rules: drawn }) => drawn)],
      signs: places,
      area: SIGN,
      labels: [...taken, ...names],
    },
    size,
  );
  return stack([panel], size, 0);
}

function titleOf({ label, display }: AgainstAxis): string {
  return withUnit(capital(label), display.unit);
}

/** "quick, 2.400 GHz at 9.32 W"; on a phone its name. */
function wordsOf({ alias, x, y }: AgainstPoint, size: Size): string {
  return size.name === 'wide' ? `${alias}, ${valueText(y)} at ${valueText(x)}` : alias;
}

/** The plane of both figures; `xOf` and `yOf` take canonical units. */
function frameOf({ x: along, y: up, points }: Against, size: Size): Plane {
  const ends = (which: 'x' | 'y') =>
    points.flatMap((point) => [
      point[which].quantity.value,
      ...(intervalOf(point[which]) ?? []),
      ...(which === 'y' && point.set ? [point.set.value] : []),
    ]);
  const x = padded(ends('x'), along, BESIDE, size.timeTicks);
  const y = padded(ends('y'), up, ABOVE, 4);
  const plane = planeOf(x, y, HEIGHT[size.name] ?? size.height, size);
  return {
    ...plane,
    xOf: (value) => plane.xOf(inDisplay(value, along.display)),
    yOf: (value) => plane.yOf(inDisplay(value, up.display)),
  };
}

function padded(values: readonly number[], { display }: AgainstAxis, share: number, ticks: number): Scale {
  const shown = values.map((value) => inDisplay(value, display));
  const [low, high] = [Math.min(...shown), Math.max(...shown)];
  const room = share * (high - low || Math.abs(high) || 1);
  const from = low >= 0 ? Math.max(0, low - room) : low - room;
  return niceScale(from, high + room, ticks);
}

function whiskersOf({ x, y, k }: AgainstPoint, plane: Plane): Rule[] {
  const { xOf, yOf } = plane;
  const [across, along] = [intervalOf(x), intervalOf(y)];
  return crossed(
    { x: xOf(x.quantity.value), y: yOf(y.quantity.value) },
    { across: across && [xOf(across[0]), xOf(across[1])], along: along && [yOf(along[0]), yOf(along[1])] },
    k,
    plane,
  );
}

/** The clock that was set, where it is not what was delivered: a stroke at its height, joined to the sign, with its words. */
function setMark(
  { set, k, alias }: AgainstPoint,
  place: { readonly x: number; readonly y: number },
  { yOf, width }: Plane,
  size: Size,
): { rules: Rule[]; label?: Label } {
  if (!set) return { rules: [] };
  const y = yOf(set.value);
  if (Math.abs(y - place.y) < APART) return { rules: [] };
  const ink = { stroke: inkOf(k), width: 1.5 };
  const right = place.x < width / 2;
  return {
    rules: [
      { x: place.x - SET, x2: place.x + SET, y, y2: y, ...ink, width: 2.5 },
      { x: place.x, x2: place.x, y, y2: place.y, ...ink },
    ],
    label: {
      x: right ? place.x + SET + 5 : place.x - SET - 5,
      y,
      text: `${alias} as set`,
      size: size.font,
      fill: inkOf(k),
      align: right ? 'left' : 'right',
    },
  };
}
