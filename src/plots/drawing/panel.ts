/** One panel of lines over time: axes, bands, limits, lines, markers, and labels that keep clear of them. */

import { endLabels, marginFor } from './labels/end-labels.ts';
import { type Limit, limitMarks } from './labels/limit-marks.ts';
import { lineLabels } from './labels/line-labels.ts';
import type { PixelLine } from './labels/obstacles.ts';
import { type PhaseRow, phaseBands, phaseLabels, phaseSpans, rowHeight } from './labels/phase-marks.ts';
import { type DrawnLine, drawLine, type LineData } from './lines/drawn-line.ts';
import { type Axes, bands, type Label, lines, markers, type Point, type Rule, rules, texts } from './marks.ts';
import type { Size } from './size.ts';
import { textWidth } from './text-width.ts';
import { pixelOf, type Scale } from './ticks.ts';
import type { Spec } from './vega.ts';
import { fixed } from './wording.ts';

export type LabelledLine = LineData & {
  readonly label: string;
  /** What its label may say besides, where there is room: "steady at 71.3 °C". */
  readonly told?: string;
};

export interface PanelContent {
  /** Quantity and unit, above the axis. */
  readonly heading: string;
  readonly lines: readonly LabelledLine[];
  readonly y: Scale;
  /** True where a reading holds until the next: clocks, flags. */
  readonly stepped: boolean;
  /** False where lines are told apart by what stands around them. */
  readonly labelled: boolean;
  readonly limits: readonly Limit[];
  readonly unit: string;
  /** Rows of phase names above, and the phases to shade. */
  readonly named: readonly PhaseRow[];
  readonly shaded: readonly PhaseRow[];
  /** More rules and words, in pixels. */
  readonly remarks?: (
    frame: Frame,
    drawn: readonly PixelLine[],
  ) => { readonly rules: readonly Rule[]; readonly labels: readonly Label[] };
}

/** The data area of a panel in a drawing. */
export interface Frame {
  readonly size: Size;
  /** Margin to the left, for the labels of ticks. */
  readonly left: number;
  readonly right: number;
  readonly width: number;
  readonly x: Scale;
  readonly xOf: (x: number) => number;
  /** Styles in use in any panel: panels share their scales. */
  readonly styles: readonly number[];
}

/** Room to the right where no label stands behind its line, px. */
const RIGHT = 10;

/** The frame that panels of these heights share: margins as wide as their labels need. To the right that is next to nothing where all lines are named beside themselves. */
export function frameOf(panels: readonly PanelContent[], heights: readonly number[], x: Scale, size: Size): Frame {
  const narrowest = frameWith(panels, x, size, RIGHT);
  const behind = panels.filter((content, i) => content.labelled && besides(content, narrowest, heights[i]!).labels === null);
  if (behind.length === 0) return narrowest;
  return frameWith(
    panels,
    x,
    size,
    marginFor(
      behind.flatMap(({ lines }) => lines.map(({ label }) => label)),
      size,
    ),
  );
}

function frameWith(panels: readonly PanelContent[], x: Scale, size: Size, right: number): Frame {
  const ticks = panels.flatMap(({ y }) => y.ticks.map((tick) => textWidth(fixed(tick, y.decimals), size.small)));
  const left = Math.ceil(Math.max(0, ...ticks) + 6);
  const width = size.width - left - right;
  const styles = [...new Set(panels.flatMap((panel) => panel.lines.map(({ k }) => k)))].sort((a, b) => a - b);
  return { size, left, right, width, x, styles, xOf: (value) => ((value - x.from) / (x.to - x.from)) * width };
}

/** The lines of a panel in pixels, its limits, and the names beside its lines; null where one finds no place there. */
function besides(content: PanelContent, frame: Frame, height: number) {
  const { width, size, x } = frame;
  const drawn = content.lines.map((line) => drawLine(line, x, width));
  const pixels = drawn.map(({ faint, strong }) => inPixels(faint.length > 0 ? faint : strong, content.y, frame, height));
  const limit = limitMarks(content.limits, content.unit, content.y, { width, height, size, lines: pixels });
  const limits = limit.rules.map(({ x: from, x2, y, y2 }): PixelLine => ({ x: [from, x2], y: [y, y2] }));
  const area = { width, height, size, lines: [...pixels, ...limits] };
  const named = content.lines.map(({ k, label, told }, i) => ({
    line: pixels[i]!,
    k,
    texts: told === undefined ? [label] : [`${label}, ${told}`, label],
  }));
  return { drawn, pixels, limit, area, labels: content.labelled ? lineLabels(named, area, limit.boxes) : null };
}

/** Room that a heading needs above its panel, px. */
export function headingRoom(size: Size): number {
  return size.font + 14;
}

/** The Vega-Lite view of a panel. `xTitle` null: a panel below carries the time axis. */
export function panelSpec(content: PanelContent, frame: Frame, height: number, xTitle: string | null): Spec {
  const { width, x, styles } = frame;
  const axes: Axes = { x, y: content.y, xTitle, grid: 'y' };
  const { drawn, pixels, limit, area, labels } = besides(content, frame, height);
  const ends =
    labels !== null
      ? { labels, leaders: [] }
      : content.labelled
        ? endLabels(endsOf(content, drawn, frame, height), area, limit.boxes)
        : NOTHING;
  const more = content.remarks?.(frame, pixels) ?? NOTHING;
  const faint = drawn.flatMap((line) => line.faint);
  return {
    width,
    height,
    layer: [
      bands([...phaseBands(content.shaded, frame.xOf, height), { x: -frame.left, x2: width + frame.right, y: 0, y2: 0 }]),
      ...(faint.length > 0 ? [lines(faint, styles, axes, { faint: true })] : []),
      lines(
        drawn.flatMap((line) => line.strong),
        styles,
        axes,
        { stepped: content.stepped },
      ),
      rules([...phaseSpans(content.named, frame.xOf, frame.size), ...ends.leaders, ...limit.rules, ...more.rules]),
      ...(content.labelled ? [markers(markerPoints(drawn, frame), styles, axes)] : []),
      texts([
        heading(content, frame),
        ...phaseLabels(content.named, frame.xOf, width, frame.size),
        ...limit.labels,
        ...ends.labels,
        ...more.labels,
      ]),
    ],
  };
}

const NOTHING = { rules: [], labels: [], leaders: [] } as const;

function heading(content: PanelContent, { left, size }: Frame): Label {
  const rows = content.named.length;
  const y = -rows * rowHeight(size) - size.font / 2 - (rows > 0 ? 4 : 8);
  return { x: -left, y, text: content.heading, size: size.font, fill: 'var(--plot-ink)' };
}

function inPixels(points: readonly Point[], y: Scale, { xOf }: Frame, height: number): PixelLine {
  return {
    x: points.map((point) => xOf(point.x)),
    y: points.map((point) => pixelOf(point.y, y, height)),
  };
}

/** Where lines are named that find no place beside themselves: where they end, or, where they come together there, where the load ends. */
function endsOf(content: PanelContent, drawn: readonly DrawnLine[], frame: Frame, height: number) {
  const ends = content.lines.flatMap((line, i) => endOf(line, drawn[i]!, content.y, frame, height));
  const loads = content.shaded.flatMap(({ stretches }) => stretches.filter(({ name }) => name === 'load'));
  const close = ends.some((end, i) => ends.some((other, j) => j < i && Math.abs(end.y - other.y) < frame.size.font));
  if (!close || loads.length === 0) return ends;
  const until = Math.min(...loads.map(({ to }) => to));
  return content.lines.flatMap((line, i) => {
    const point = drawn[i]!.strong.findLast(({ x }) => x <= until);
    if (point === undefined) return [];
    return [{ x: frame.xOf(point.x), y: pixelOf(point.y, content.y, height), k: line.k, text: line.label }];
  });
}

function endOf(line: LabelledLine, { strong }: DrawnLine, y: Scale, { xOf }: Frame, height: number) {
  const last = strong.at(-1);
  const end = line.x.at(-1);
  return last === undefined || end === undefined
    ? []
    : [{ x: xOf(end), y: pixelOf(last.y, y, height), k: line.k, text: line.label }];
}

/** Markers on the lines at even distances, each line's shifted against the others'; none where there is one line alone. */
function markerPoints(drawn: readonly DrawnLine[], { x, size }: Frame): Point[] {
  if (drawn.length < 2) return [];
  const step = (x.to - x.from) / size.markers;
  return drawn.flatMap(({ strong }, index) => {
    const wanted = Array.from({ length: size.markers }, (_, m) => x.from + (m + (index + 0.5) / drawn.length) * step);
    return wanted.flatMap((time) => nearestPoint(strong, time, step / 4));
  });
}

function nearestPoint(points: readonly Point[], time: number, within: number): Point[] {
  const i = nearestIndex(
    points.map(({ x }) => x),
    time,
  );
  const point = points[i];
  return point === undefined || Math.abs(point.x - time) > within ? [] : [point];
}

/** Index of the time nearest to the one wanted; binary search, `x` never decreases. */
export function nearestIndex(x: ArrayLike<number>, wanted: number): number {
  let low = 0;
  let high = x.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (x[middle]! < wanted) low = middle + 1;
    else high = middle;
  }
  return low > 0 && wanted - x[low - 1]! <= x[low]! - wanted ? low - 1 : low;
}
