/** Where everything of a plot of differences stands, and its specification. */
import { isPresent } from '../../figures/figure.ts';
import { differs, intervalOf, spreadsOf, verdictOf } from '../data/plotted-comparison.ts';
import { stack } from '../drawing/config.ts';
import { type Dot, dotPanel, placeOn } from '../drawing/dot-panel.ts';
import { rangeOf } from '../drawing/dots.ts';
import type { Label } from '../drawing/marks.ts';
import { inkOf, ofRun } from '../drawing/palette.ts';
import type { Size } from '../drawing/size.ts';
import { cut, textWidth } from '../drawing/text-width.ts';
import { niceScale, type Scale } from '../drawing/ticks.ts';
import type { Spec } from '../drawing/vega.ts';
import type { Delta, DeltaGroup, Deltas } from './plan.ts';
import { signedText } from './words.ts';

/** Height of a run's row (in a still twice that where there is room), and of the room above the first and below the last, px. */
const ROW = 26;
const PAD = 4;
/** Distance of words from the data area and from each other, px. */
const BESIDE = 12;
/** An alias takes at most this share of the drawing. */
const WIDEST = 0.25;
/** Free share of an axis beyond the outermost ends. */
const MARGIN = 0.05;

/** The specification in a size: a panel for each quantity, a row for each run. */
export function layOutDeltas({ groups, reference }: Deltas, size: Size): Spec {
  const aliases = groups.flatMap(({ deltas }) => deltas.map(({ alias }) => textWidth(aliasOf(alias, size), size.font)));
  const left = Math.ceil(Math.max(...aliases) + 12);
  const told = groups.flatMap(({ deltas, unit }) => deltas.map((delta) => textWidth(signedText(delta, unit), size.font)));
  const verdicts = groups.flatMap(({ deltas }) => deltas.map(({ figure }) => textWidth(verdictOf(figure), size.small)));
  const values = Math.ceil(Math.max(...told));
  const right = BESIDE + values + (size.name === 'wide' ? Math.ceil(Math.max(...verdicts)) + BESIDE : 0);
  const width = size.width - left - right;
  const panels = groups.map((group) => panelOf(group, reference.alias, { size, left, right, width, values }));
  return stack(panels, size, 2 * size.small + size.font + 38);
}

interface Frame {
  readonly size: Size;
  readonly left: number;
  readonly right: number;
  readonly width: number;
  /** Room for the values, px. */
  readonly values: number;
}

function panelOf({ what, unit, deltas }: DeltaGroup, reference: string, frame: Frame): Spec {
  const { size, left, right, width } = frame;
  const x = axisOf(rangeOf(spreadsOf(deltas.map(({ figure }) => figure)), 0), size);
  const row = size.name === 'still' ? Math.min(2 * ROW, Math.max(ROW, (size.height - size.small) / deltas.length)) : ROW;
  const height = deltas.length * row + 2 * PAD;
  const rowOf = (index: number) => PAD + (index + 0.5) * row;
  const dots = deltas.flatMap(({ figure, k }, index): Dot[] => {
    if (!isPresent(figure)) return [];
    return [{ value: figure.quantity.value, interval: intervalOf(figure), y: rowOf(index), k, filled: differs(figure) }];
  });
  const zero = placeOn(x, width)(0);
  return dotPanel({
    left,
    right,
    width,
    height,
    x,
    xTitle: '',
    upright: [[0, height]],
    neutral: 0,
    dots,
    rules: [],
    labels: [
      {
        x: -left,
        y: -size.small - size.font / 2 - 9,
        text: `Difference in ${what} (${unit})`,
        size: size.font,
        fill: 'var(--plot-ink)',
      },
      { x: zero, y: -size.small / 2 - 3, text: reference, size: size.small, fill: 'var(--plot-soft)', align: 'center' },
      ...deltas.flatMap((delta, index) => words(delta, unit, { y: rowOf(index), zero }, frame)),
    ],
  });
}

function axisOf([low, high]: readonly [number, number], size: Size): Scale {
  const margin = MARGIN * (high - low || 1);
  return niceScale(low < 0 ? low - margin : low, high > 0 ? high + margin : high, size.timeTicks);
}

function aliasOf(alias: string, size: Size): string {
  return cut(alias, size.font, WIDEST * size.width);
}

/** The run's name before its row, its difference (and where there is room the verdict) behind it. */
function words(
  delta: Delta,
  unit: string,
  { y, zero }: { readonly y: number; readonly zero: number },
  { size, width, values }: Frame,
): Label[] {
  const { alias, k, figure } = delta;
  const name: Label = { x: -10, y, text: aliasOf(alias, size), size: size.font, fill: inkOf(k), align: 'right' };
  if (!isPresent(figure)) {
    const rightward = width - zero > zero;
    const text = cut(`absent: ${figure.why}`, size.small, (rightward ? width - zero : zero) - 2 * 8);
    const align = rightward ? 'left' : 'right';
    return [name, { x: zero + (rightward ? 8 : -8), y, text, size: size.small, fill: ofRun('var(--plot-soft)', k), align }];
  }
  const behind = width + BESIDE + values;
  const ink = ofRun('var(--plot-ink)', k);
  const value: Label = { x: behind, y, text: signedText(delta, unit), size: size.font, fill: ink, align: 'right' };
  const verdict: Label = { x: behind + BESIDE, y, text: verdictOf(figure), size: size.small, fill: ofRun('var(--plot-soft)', k) };
  return [name, value, ...(size.name === 'wide' ? [verdict] : [])];
}
