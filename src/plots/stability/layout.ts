/** Where everything of a plot of stability stands, and its specification. */
import { printQuantity } from '../../quantities/print.ts';
import { stack } from '../drawing/config.ts';
import { type Area, placeLabels } from '../drawing/labels/sign-labels.ts';
import { bands, bars, empty, type Label, type Rule, rules, type SignMark, signs, texts } from '../drawing/marks.ts';
import type { Size } from '../drawing/size.ts';
import { textWidth } from '../drawing/text-width.ts';
import { niceScale, pixelOf, type Scale } from '../drawing/ticks.ts';
import type { Spec } from '../drawing/vega.ts';
import { displayUnit, fixed, withUnit } from '../drawing/wording.ts';
import { SIGNS } from './outcome-signs.ts';
import type { Stability } from './plan.ts';

/** Half width of the shading between passed and failed, px. */
const HALF_BAND = 7;
/** Room to the right of the signs, for the words of the last. */
const RIGHT = 10;
/** An axis of offsets spans at least this much, V. */
const LEAST_OFFSET = 0.02;
/** Free share of an axis beyond the outermost signs. */
const MARGIN = 0.08;

interface Frame {
  readonly size: Size;
  readonly width: number;
  readonly left: number;
  readonly x: Scale;
  readonly y: Scale;
  readonly xOf: (volts: number) => number;
  readonly yOf: (hertz: number) => number;
  readonly clockUnit: string;
}

/** The specification in a size. */
export function layOutStability(stability: Stability, size: Size): Spec {
  const frame = frameOf(stability, size);
  const marks = stability.settings.map(({ clock, offset, outcome }): SignMark => {
    const { shape, ink, filled } = SIGNS[outcome];
    return { x: frame.xOf(offset), y: frame.yOf(clock), shape, stroke: ink, fill: filled ? ink : 'var(--plot-paper)' };
  });
  const rated = ratedLine(stability, frame);
  const drawn = [...rated.rules, ...boundary(stability, frame)];
  const panel = {
    width: frame.width,
    height: size.height,
    layer: [
      bands([{ x: -frame.left, x2: frame.width + RIGHT, y: 0, y2: 0 }]),
      bars(shading(stability, frame)),
      empty({ x: frame.x, y: frame.y, xTitle: 'Voltage offset (mV)', grid: 'y' }),
      rules(drawn),
      signs(marks),
      texts([heading(frame), ...rated.labels, ...words(stability, marks, frame, { taken: rated.labels, lines: drawn })]),
    ],
  };
  return stack([panel], size, 0);
}

function frameOf({ settings, subject }: Stability, size: Size): Frame {
  const clocks = [...settings.map(({ clock }) => clock), ...(subject.ratedClock ? [subject.ratedClock.value] : [])];
  const display = displayUnit('clock', 'Hz', Math.max(...clocks));
  const y = padded(
    clocks.map((clock) => clock / display.divisor),
    0,
    size.valueTicks,
  );
  const x = padded(
    settings.map(({ offset }) => offset * 1000),
    LEAST_OFFSET * 1000,
    size.timeTicks,
  );
  const left = Math.ceil(Math.max(...y.ticks.map((tick) => textWidth(fixed(tick, y.decimals), size.small))) + 6);
  const width = size.width - left - RIGHT;
  return {
    size,
    width,
    left,
    x,
    y,
    xOf: (volts) => ((volts * 1000 - x.from) / (x.to - x.from)) * width,
    yOf: (hertz) => pixelOf(hertz / display.divisor, y, size.height),
    clockUnit: display.unit,
  };
}

/** An axis that leaves room around the outermost values. */
function padded(values: readonly number[], least: number, ticks: number): Scale {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const span = Math.max(high - low, least, Math.abs(high) * 0.02);
  return niceScale(low - MARGIN * span, high + MARGIN * span, ticks);
}

function shading({ brackets }: Stability, { xOf, yOf }: Frame) {
  return brackets.flatMap(({ offset, passed, failed }) => {
    if (passed === null || failed === null) return [];
    return [{ x: xOf(offset) - HALF_BAND, x2: xOf(offset) + HALF_BAND, y: yOf(failed), y2: yOf(passed), fill: 'var(--plot-soft)' }];
  });
}

/** From one highest passed clock to that of the next offset. */
function boundary({ brackets }: Stability, { xOf, yOf }: Frame): Rule[] {
  const passed = brackets.filter((bracket): bracket is typeof bracket & { passed: number } => bracket.passed !== null);
  return passed.slice(1).map(({ offset, passed: clock }, index) => {
    const from = passed[index]!;
    return {
      x: xOf(from.offset),
      y: yOf(from.passed),
      x2: xOf(offset),
      y2: yOf(clock),
      stroke: SIGNS.passed.ink,
      width: 1.25,
      dash: [4, 3],
    };
  });
}

function ratedLine({ subject }: Stability, { size, width, yOf }: Frame): { rules: Rule[]; labels: Label[] } {
  const rated = subject.ratedClock;
  if (!rated) return { rules: [], labels: [] };
  const y = yOf(rated.value);
  const text = `rated clock ${printQuantity(rated).text}`;
  return {
    rules: [{ x: 0, x2: width, y, y2: y, stroke: 'var(--plot-limit)', width: 1.25, dash: [2, 3] }],
    labels: [{ x: width, y: y + size.small * 0.8, text, size: size.small, fill: 'var(--plot-limit)', align: 'right' }],
  };
}

function heading({ size, left, clockUnit }: Frame): Label {
  return { x: -left, y: -size.font / 2 - 8, text: withUnit('Clock', clockUnit), size: size.font, fill: 'var(--plot-ink)' };
}

/** What came of each setting, in words beside its sign. */
function words(stability: Stability, marks: readonly SignMark[], frame: Frame, obstacles: Pick<Area, 'taken' | 'lines'>): Label[] {
  const { size, width } = frame;
  const wanted = stability.settings.map((setting, index) => {
    const count = setting.tried.length > 1 ? ` × ${setting.tried.length}` : '';
    return { ...marks[index]!, text: `${setting.outcome}${count}`, fill: SIGNS[setting.outcome].ink };
  });
  return placeLabels(wanted, { width, height: size.height, font: size.small, ...obstacles });
}
