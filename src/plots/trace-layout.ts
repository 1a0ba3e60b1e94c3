/** Where everything of a trace stands, and its specification. */
import { timeTitle } from './align.ts';
import { stack } from './config.ts';
import { endLabels, marginFor } from './end-labels.ts';
import { type Axes, bands, type Label, lines, markers, type Point, type Rule, rules, texts } from './marks.ts';
import { phaseBands, phaseBorders, phaseLabels, rowHeight } from './phase-marks.ts';
import { type Size, WIDE } from './size.ts';
import { textWidth } from './text-width.ts';
import { thin } from './thin.ts';
import { niceScale, pixelOf, type Scale, timeScale } from './ticks.ts';
import type { Line, Trace, TracePanel } from './trace.ts';
import type { Spec } from './vega.ts';
import { fixed, withUnit } from './wording.ts';

/** Quantities whose axis begins at zero, because their size means something. */
const FROM_ZERO = new Set(['power', 'current', 'energy', 'utilisation', 'fan', 'throttle_flag']);
/** An axis spans at least this share of its values, so that noise does not fill it; temperatures at least 8 K. */
const LEAST_SHARE = 0.1;
const LEAST_KELVIN = 8;
/** A limit that would stretch the axis by more than this is named at the edge instead of drawn. */
const FAR = 0.8;

interface Frame {
  readonly left: number;
  readonly width: number;
  readonly height: number;
  readonly x: Scale;
  readonly xOf: (x: number) => number;
  readonly size: Size;
}

/** The specification of a trace in a size. */
export function layOutTrace(trace: Trace, size: Size): Spec {
  const height = trace.panels.length > 1 ? size.stackedHeight : size.height;
  const scales = trace.panels.map((panel) => valueScale(panel, size));
  const left = leftMargin(scales, size);
  const right = marginFor(
    trace.panels.flatMap((panel) => panel.lines.map(({ label }) => label)),
    size,
  );
  const width = size.width - left - right;
  const x = timeScale(trace.alignment.from, trace.alignment.to, size.timeTicks);
  const xOf = (value: number) => ((value - x.from) / (x.to - x.from)) * width;
  const frame = { left, width, height, x, xOf, size };
  const panels = trace.panels.map((panel, index) => panelSpec(trace, panel, index, scales[index]!, frame));
  return stack(panels, size, headingRoom(size) + 10);
}

/** The readings to draw of a line: thinned to the pixels of the data area, null between unbroken stretches. */
export function drawnPoints(line: Line, x: Scale, width: number): Point[] {
  const grid = { from: x.from, to: x.to, columns: Math.round(width) };
  return line.segments.flatMap(({ start, end }, index) => {
    const points: Point[] = thin(line.x, line.y, grid, start, end).map((i) => ({ x: line.x[i]!, y: line.y[i]!, k: line.k }));
    return index === 0 ? points : [{ x: line.x[start]!, y: null, k: line.k }, ...points];
  });
}

/** Width of the data area of the wide drawing: what downloads of the drawn data are thinned to. */
export function wideGrid(trace: Trace): { readonly x: Scale; readonly width: number } {
  return { x: timeScale(trace.alignment.from, trace.alignment.to, WIDE.timeTicks), width: WIDE.width };
}

function headingRoom(size: Size): number {
  return size.font + 14;
}

function leftMargin(scales: readonly Scale[], size: Size): number {
  const widest = Math.max(
    ...scales.flatMap((scale) => scale.ticks.map((tick) => textWidth(fixed(tick, scale.decimals), size.small))),
  );
  return Math.ceil(widest + 6);
}

function panelSpec(trace: Trace, panel: TracePanel, index: number, y: Scale, frame: Frame): Spec {
  const { width, height, size, x } = frame;
  const last = index === trace.panels.length - 1;
  const axes: Axes = { x, y, xTitle: last ? timeTitle(trace.alignment) : null, grid: 'y' };
  const styles = panel.lines.map(({ k }) => k);
  const points = panel.lines.flatMap((line) => drawnPoints(line, x, width));
  const { labels, leaders } = endLabels(
    panel.lines.map((line) => ({ ...endOf(line, y, frame), k: line.k, text: line.label })),
    width,
    height,
    size,
  );
  const limit = limitMarks(panel, y, frame);
  const phases = index === 0 ? trace.phases : [];
  return {
    width,
    height,
    layer: [
      lines(points, styles, axes, { stepped: panel.kind === 'throttle_flag' || panel.kind === 'clock' }),
      bands(phaseBands(trace.phases, frame.xOf, height)),
      rules([...phaseBorders(phases, frame.xOf, size), ...leaders, ...limit.rules]),
      markers(markerPoints(panel.lines, frame), styles, axes),
      texts([
        heading(panel, index === 0 ? trace.phases.length : 0, frame),
        ...phaseLabels(phases, frame.xOf, width, size),
        ...limit.labels,
        ...labels,
      ]),
    ],
  };
}

function heading(panel: TracePanel, rows: number, { left, size }: Frame): Label {
  const y = -rows * rowHeight(size) - size.font / 2 - 8;
  return { x: -left, y, text: withUnit(panel.heading, panel.unit), size: size.font, fill: 'var(--plot-ink)' };
}

function endOf(line: Line, y: Scale, { xOf, height }: Frame): { x: number; y: number } {
  const last = line.x.length - 1;
  return { x: xOf(line.x[last]!), y: pixelOf(line.y[last]!, y, height) };
}

/** Markers at even distances, each line's shifted against the others', on readings. */
function markerPoints(all: readonly Line[], { x, size }: Frame): Point[] {
  if (all.length < 2) return [];
  const step = (x.to - x.from) / size.markers;
  return all.flatMap((line, index) => {
    const shift = (index + 0.5) / all.length;
    const wanted = Array.from({ length: size.markers }, (_, m) => x.from + (m + shift) * step);
    return wanted.flatMap((time) => nearestPoint(line, time, step / 4));
  });
}

function nearestPoint(line: Line, time: number, within: number): Point[] {
  const i = nearestIndex(line.x, time);
  return Math.abs(line.x[i]! - time) > within ? [] : [{ x: line.x[i]!, y: line.y[i]!, k: line.k }];
}

/** Index of the time nearest to the one wanted; binary search, `x` never decreases and is not empty. */
export function nearestIndex(x: Float64Array, wanted: number): number {
  let low = 0;
  let high = x.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (x[middle]! < wanted) low = middle + 1;
    else high = middle;
  }
  return low > 0 && wanted - x[low - 1]! <= x[low]! - wanted ? low - 1 : low;
}

/** Lowest and highest of all lines of a panel. */
export function extent(all: readonly Pick<Line, 'y'>[]): [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const { y } of all) {
    for (const value of y) {
      if (value < low) low = value;
      if (value > high) high = value;
    }
  }
  return [low, high];
}

function valueScale(panel: TracePanel, size: Size): Scale {
  const [lowest, highest] = extent(panel.lines);
  let [low, high] = FROM_ZERO.has(panel.kind) || panel.rise ? [Math.min(0, lowest), Math.max(0, highest)] : [lowest, highest];
  const least =
    panel.kind === 'temperature' || panel.kind === 'ambient' ? LEAST_KELVIN : LEAST_SHARE * Math.max(Math.abs(low), Math.abs(high));
  if (high - low < least) [low, high] = [low - (least - high + low) / 2, high + (least - high + low) / 2];
  const near = limitsOf(panel).filter(({ value }) => value > low && value - high <= FAR * (high - low));
  return niceScale(low, Math.max(high, ...near.map(({ value }) => value)), size.valueTicks);
}

/** The throttle limits of a panel, each once, with whose it is where they differ. */
function limitsOf(panel: TracePanel): { value: number; owners: string[] }[] {
  const limits = new Map<number, string[]>();
  for (const { limit, label } of panel.lines) if (limit !== undefined) limits.set(limit, [...(limits.get(limit) ?? []), label]);
  return [...limits].map(([value, owners]) => ({ value, owners: owners.length === panel.lines.length ? [] : owners }));
}

function limitMarks(panel: TracePanel, y: Scale, { width, height, size }: Frame): { rules: Rule[]; labels: Label[] } {
  const fill = 'var(--plot-limit)';
  const drawn = limitsOf(panel).map(({ value, owners }) => {
    const inside = value >= y.from && value <= y.to;
    const whose = owners.length > 0 ? `, ${owners.join(', ')}` : '';
    const text = `throttle limit ${fixed(value, Number.isInteger(value) ? 0 : 1)} ${panel.unit}${whose}${inside ? '' : ' (off the scale)'}`;
    const at = inside ? pixelOf(value, y, height) : 0;
    const label: Label = {
      x: width - 4,
      y: at < size.small ? at + size.small * 0.7 : at - size.small * 0.65,
      text,
      size: size.small,
      fill,
      align: 'right',
    };
    return { label, rules: inside ? [{ x: 0, x2: width, y: at, y2: at, stroke: fill, width: 1.25, dash: [2, 3] }] : [] };
  });
  return { rules: drawn.flatMap((each) => each.rules), labels: drawn.map((each) => each.label) };
}
