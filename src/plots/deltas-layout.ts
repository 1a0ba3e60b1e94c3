/** Where everything of a plot of differences stands, and its specification. */
import { isPresent } from '../figures/figure.ts';
import { intervalOf, isToldApart, verdictOf } from './compared.ts';
import { stack } from './config.ts';
import type { Delta, DeltaGroup, Deltas } from './deltas.ts';
import { capital, signedText } from './deltas-words.ts';
import { type Dot, dotPanel, placeOn } from './dot-panel.ts';
import { rangeOf } from './dots.ts';
import type { Label } from './marks.ts';
import { inkOf } from './palette.ts';
import { headingRoom } from './panel.ts';
import type { Size } from './size.ts';
import { cut, textWidth } from './text-width.ts';
import { niceScale, type Scale } from './ticks.ts';
import type { Spec } from './vega.ts';
import { displayUnit, inDisplay, withUnit } from './wording.ts';

/** Height of a run's row, and of the room above the first and below the last, px. */
const ROW = 26;
const PAD = 4;
/** An alias takes at most this share of the drawing. */
const WIDEST = 0.25;
/** Free share of an axis beyond the outermost ends. */
const MARGIN = 0.05;

/** The specification in a size: a panel for each quantity, a row for each run. */
export function layOutDeltas({ groups, reference }: Deltas, size: Size): Spec {
  const aliases = groups.flatMap(({ deltas }) => deltas.map(({ alias }) => textWidth(aliasOf(alias, size), size.font)));
  const left = Math.ceil(Math.max(...aliases) + 12);
  const told = groups.flatMap(({ deltas }) =>
    deltas.filter(({ figure }) => isPresent(figure)).map((delta) => wordsWidth(delta, size)),
  );
  const right = Math.ceil(Math.max(...told) + 10);
  const width = size.width - left - right;
  const panels = groups.map((group) => panelOf(group, reference.alias, { size, left, right, width }));
  return stack(panels, size, headingRoom(size) + 4);
}

interface Frame {
  readonly size: Size;
  readonly left: number;
  readonly right: number;
  readonly width: number;
}

function panelOf({ what, unit, deltas }: DeltaGroup, reference: string, { size, left, right, width }: Frame): Spec {
  const present = deltas.flatMap(({ figure }) =>
    isPresent(figure) ? [{ value: figure.quantity.value, interval: intervalOf(figure) }] : [],
  );
  const [low, high] = rangeOf(present, 0);
  const display = displayUnit(unit === 'W' ? 'power' : 'temperature', unit, Math.max(Math.abs(low), Math.abs(high)));
  const shown = (value: number) => inDisplay(value, display);
  const x = axisOf(shown(low), shown(high), size);
  const height = deltas.length * ROW + 2 * PAD;
  const rowOf = (index: number) => PAD + (index + 0.5) * ROW;
  const dots = deltas.flatMap(({ figure, k }, index): Dot[] => {
    if (!isPresent(figure)) return [];
    const interval = intervalOf(figure);
    const ends = interval && ([shown(interval[0]), shown(interval[1])] as const);
    return [{ value: shown(figure.quantity.value), interval: ends, y: rowOf(index), k, filled: isToldApart(figure) }];
  });
  const zero = placeOn(x, width)(0);
  return dotPanel({
    left,
    right,
    width,
    height,
    x,
    xTitle: withUnit('Difference', display.unit),
    neutral: 0,
    dots,
    rules: [],
    labels: [
      { x: -left, y: -size.font / 2 - 8, text: capital(what), size: size.font, fill: 'var(--plot-ink)' },
      { x: zero, y: -size.small / 2 - 3, text: reference, size: size.small, fill: 'var(--plot-soft)', align: 'center' },
      ...deltas.flatMap((delta, index) => words(delta, rowOf(index), { size, left, right, width })),
    ],
  });
}

function axisOf(low: number, high: number, size: Size): Scale {
  const margin = MARGIN * (high - low || 1);
  return niceScale(low < 0 ? low - margin : low, high > 0 ? high + margin : high, size.timeTicks);
}

function aliasOf(alias: string, size: Size): string {
  return cut(alias, size.font, WIDEST * size.width);
}

function wordsWidth(delta: Delta, size: Size): number {
  const verdict = size.name === 'wide' ? textWidth(verdictText(delta), size.small) + 8 : 0;
  return textWidth(signedText(delta), size.font) + verdict;
}

function verdictText({ figure }: Delta): string {
  return verdictOf(figure);
}

/** The run's name before its row, its difference (and where there is room the verdict) behind it. */
function words(delta: Delta, y: number, { size, width }: Frame): Label[] {
  const { alias, k, figure } = delta;
  const name: Label = { x: -10, y, text: aliasOf(alias, size), size: size.font, fill: inkOf(k), align: 'right' };
  if (!isPresent(figure)) {
    const text = cut(`absent: ${figure.why}`, size.small, width - 12);
    return [name, { x: 8, y, text, size: size.small, fill: 'var(--plot-soft)' }];
  }
  const value: Label = { x: width + 10, y, text: signedText(delta), size: size.font, fill: 'var(--plot-ink)' };
  if (size.name !== 'wide') return [name, value];
  const behind = width + 10 + textWidth(signedText(delta), size.font) + 8;
  return [name, value, { x: behind, y, text: verdictText(delta), size: size.small, fill: 'var(--plot-soft)' }];
}
