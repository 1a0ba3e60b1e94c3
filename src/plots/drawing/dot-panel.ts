/** A panel of signs with whiskers along a horizontal axis, with a line where a run would equal the reference. */
import { type Spread, sign, whisker } from './dots.ts';
import { bands, empty, type Label, type Rule, rules, signs, texts } from './marks.ts';
import type { Scale } from './ticks.ts';
import type { Spec } from './vega.ts';

export interface Dot extends Spread {
  /** Middle of its row, px. */
  readonly y: number;
  /** Style of its run, from 0. */
  readonly k: number;
  /** Told apart from the reference. */
  readonly filled: boolean;
}

export interface DotPanel {
  readonly left: number;
  readonly right: number;
  /** Of the data area, px. */
  readonly width: number;
  readonly height: number;
  readonly x: Scale;
  /** '' where the heading says it. */
  readonly xTitle: string;
  /** Where the upright lines run, px; they leave room for words. */
  readonly upright: readonly (readonly [from: number, to: number])[];
  /** Where a run equals the reference, in the unit of the axis. */
  readonly neutral: number;
  readonly dots: readonly Dot[];
  readonly rules: readonly Rule[];
  readonly labels: readonly Label[];
}

/** Area of a sign, px². */
const SIGN = 60;

/** Place of a value on the axis of a panel `width` px wide. */
export function placeOn(x: Scale, width: number): (value: number) => number {
  const along = x.log ? Math.log : (value: number) => value;
  return (value) => ((along(value) - along(x.from)) / (along(x.to) - along(x.from))) * width;
}

export function dotPanel(panel: DotPanel): Spec {
  const { left, right, width, height, x, neutral, dots } = panel;
  const xOf = placeOn(x, width);
  const upright = (value: number, stroke: string, rule: Partial<Rule> = {}): Rule[] =>
    panel.upright.map(([y, y2]) => ({ x: xOf(value), x2: xOf(value), y, y2, stroke, ...rule }));
  const whiskers = dots.flatMap(({ interval, y, k }) =>
    interval ? whisker([xOf(Math.max(interval[0], x.log ? x.from / 2 : interval[0])), xOf(interval[1])], y, [0, width], { k }) : [],
  );
  return {
    width,
    height,
    layer: [
      bands([{ x: -left, x2: width + right, y: 0, y2: 0 }]),
      empty({ x, y: { from: height, to: 0, ticks: [], decimals: 0 }, xTitle: panel.xTitle, grid: 'none' }),
      rules([
        ...x.ticks.flatMap((tick) => upright(tick, 'var(--plot-grid)')),
        ...upright(neutral, 'var(--plot-ink)', { width: 1.25 }),
        ...panel.rules,
        ...whiskers,
      ]),
      signs(
        dots.map(({ value, y, k, filled }) => sign(xOf(value), y, k, filled)),
        SIGN,
      ),
      texts(panel.labels),
    ],
  };
}
