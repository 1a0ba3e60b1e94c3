/** Where everything of a plot of power by phase stands, and its specification. */
import { isPresent } from '../../figures/figure.ts';
import { intervalOf } from '../data/plotted-comparison.ts';
import { stack } from '../drawing/config.ts';
import { bars, empty, type Label, type Rule, rules, texts } from '../drawing/marks.ts';
import { inkOf, ofRun } from '../drawing/palette.ts';
import type { Size } from '../drawing/size.ts';
import { cut, textWidth } from '../drawing/text-width.ts';
import { niceScale, type Scale } from '../drawing/ticks.ts';
import type { Spec } from '../drawing/vega.ts';
import { type DisplayUnit, displayUnit, withUnit } from '../drawing/wording.ts';
import type { PowerBar, PowerByPhase, PowerGroup } from './plan.ts';
import { meanOf, shortUncertainty } from './words.ts';

/** Height of a run's row, of the name of a phase above its rows, of the space below them, px. A still may have rows twice as high. */
const ROW = 24;
const HEAD = 24;
const SPACE = 8;
/** Height of a bar as a share of its row; a whisker's ends are half as high. */
const BAR = 0.5;
/** An alias takes at most this share of the drawing. */
const WIDEST = 0.25;

interface Frame {
  readonly size: Size;
  readonly left: number;
  readonly width: number;
  readonly display: DisplayUnit;
  readonly xOf: (watts: number) => number;
  /** Height of a bar, px. */
  readonly bar: number;
}

interface Row extends PowerBar {
  /** Middle of the row, px. */
  readonly y: number;
}

/** The specification in a size: rows of bars from zero, grouped by phase. */
export function layOutPower(power: PowerByPhase, size: Size): Spec {
  const row = rowIn(power, size);
  const { rows, heads, height } = stacked(power.groups, row);
  const highest = Math.max(...rows.map(upperEnd));
  const display = displayUnit('power', 'W', highest);
  const left = Math.ceil(
    Math.max(...rows.map(({ alias }) => textWidth(cut(alias, size.font, WIDEST * size.width), size.font))) + 10,
  );
  const room = Math.max(...rows.map((row) => wordsWidth(row, size)));
  const x = niceScale(0, highest / display.divisor, size.timeTicks);
  const right = Math.ceil(Math.max(8, roomBeyond(rows, x, display, size.width - left, room)));
  const width = size.width - left - right;
  const xOf = (watts: number) => (watts / display.divisor / x.to) * width;
  const frame: Frame = { size, left, width, display, xOf, bar: BAR * row };
  const panel = {
    width,
    height,
    layer: [
      empty({ x, y: { from: height, to: 0, ticks: [], decimals: 0 }, xTitle: withUnit('Mean power', display.unit), grid: 'none' }),
      bars([{ x: -left, x2: width + right, y: 0, y2: 0, fill: 'none' }, ...rows.flatMap((row) => barAt(row, frame))]),
      rules(rows.flatMap((row) => whiskers(row, frame))),
      texts([...heads.map(({ phase, y }) => headOf(phase, y, frame)), ...rows.flatMap((row) => words(row, frame))]),
    ],
  };
  return stack([panel], size, 0);
}

function rowIn({ groups }: PowerByPhase, size: Size): number {
  if (size.name !== 'still') return ROW;
  const count = groups.reduce((sum, { bars: rows }) => sum + rows.length, 0);
  const free = size.height + size.font - groups.length * (HEAD + SPACE);
  return Math.min(2 * ROW, Math.max(ROW, Math.floor(free / count)));
}

/** Rows and names of phases one below the other. */
function stacked(
  groups: readonly PowerGroup[],
  row: number,
): { rows: Row[]; heads: { phase: string; y: number }[]; height: number } {
  const rows: Row[] = [];
  const heads: { phase: string; y: number }[] = [];
  let y = 0;
  for (const { phase, bars: group } of groups) {
    heads.push({ phase, y: y + HEAD / 2 });
    y += HEAD;
    for (const bar of group) {
      rows.push({ ...bar, y: y + row / 2 });
      y += row;
    }
    y += SPACE;
  }
  return { rows, heads, height: y };
}

/** Upper end of a bar and its interval, W. */
function upperEnd({ figure }: PowerBar): number {
  if (!isPresent(figure)) return 0;
  return Math.max(figure.quantity.value, intervalOf(figure)?.[1] ?? 0);
}

/** Margin that keeps the words of the longest bars inside the drawing. */
function roomBeyond(rows: readonly Row[], x: Scale, display: DisplayUnit, space: number, words: number): number {
  const share = Math.max(...rows.map((row) => upperEnd(row) / display.divisor / x.to));
  return share * space + words <= space ? 8 : (words - (1 - share) * space) / share;
}

function wordsWidth(row: PowerBar, size: Size): number {
  return textWidth(meanOf(row), size.font) + (size.name === 'wide' ? textWidth(shortUncertainty(row), size.small) + 8 : 0) + 12;
}

function barAt({ figure, k, y }: Row, { xOf, bar }: Frame) {
  if (!isPresent(figure)) return [];
  return [{ x: 0, x2: xOf(figure.quantity.value), y: y - bar / 2, y2: y + bar / 2, fill: inkOf(k) }];
}

/** The end of the bar, and its interval as a line with ends. */
function whiskers({ figure, k, y }: Row, { xOf, bar }: Frame): Rule[] {
  if (!isPresent(figure)) return [];
  const x = xOf(figure.quantity.value);
  const end: Rule = { x, x2: x, y: y - bar / 2, y2: y + bar / 2, stroke: inkOf(k), width: 2 };
  const interval = intervalOf(figure);
  if (!interval) return [end];
  const [low, high] = [xOf(interval[0]), xOf(interval[1])];
  const ink = { stroke: ofRun('var(--plot-ink)', k), width: 1.25 };
  return [
    end,
    { x: low, x2: high, y, y2: y, ...ink },
    ...[low, high].map((at) => ({ x: at, x2: at, y: y - bar / 4, y2: y + bar / 4, ...ink })),
  ];
}

function headOf(phase: string, y: number, { left, size }: Frame): Label {
  return { x: -left, y, text: phase, size: size.font, fill: 'var(--plot-ink)' };
}

/** The run's name before its bar, value and (where there is room) uncertainty behind it. */
function words(row: Row, { size, xOf, width, left }: Frame): Label[] {
  const name: Label = {
    x: -8,
    y: row.y,
    text: cut(row.alias, size.font, left - 8),
    size: size.font,
    fill: inkOf(row.k),
    align: 'right',
  };
  const value = meanOf(row);
  const soft = ofRun('var(--plot-soft)', row.k);
  const x = xOf(upperEnd(row)) + 8;
  if (!isPresent(row.figure))
    return [name, { x, y: row.y, text: cut(`absent: ${row.figure.why}`, size.small, width - 8), size: size.small, fill: soft }];
  const behind = x + textWidth(value, size.font) + 6;
  const uncertainty: Label = { x: behind, y: row.y, text: shortUncertainty(row), size: size.small, fill: soft };
  return [
    name,
    { x, y: row.y, text: value, size: size.font, fill: ofRun('var(--plot-ink)', row.k) },
    ...(size.name === 'wide' ? [uncertainty] : []),
  ];
}
