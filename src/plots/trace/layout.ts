/** Where everything of a trace stands, and its specification. */

import type { FigureName } from '../../figures/catalogue.ts';
import type { QuantityKind } from '../../intake/log.ts';
import { stack } from '../drawing/config.ts';
import type { Along } from '../drawing/drawn.ts';
import { limitsOf } from '../drawing/labels/limit-marks.ts';
import { rowHeight } from '../drawing/labels/phase-marks.ts';
import { timeTitle } from '../drawing/lines/align.ts';
import { frameOf, headingRoom, type PanelContent, panelSpec } from '../drawing/panel.ts';
import { NARROW, type Size, WIDE } from '../drawing/size.ts';
import { timeScale } from '../drawing/ticks.ts';
import { valueScale } from '../drawing/value-scale.ts';
import type { Spec } from '../drawing/vega.ts';
import { withUnit } from '../drawing/wording.ts';
import type { Line, Trace, TracePanel } from './panels.ts';

/** About how many values are marked on a stacked panel. */
const STACKED_TICKS = 4;
/** A flag has two states and needs no more, px. */
const FLAG_HEIGHT = 40;

/** The specification of a trace in a size. */
export function layOutTrace(trace: Trace, size: Size): Spec {
  const { contents, heights, frame } = framed(trace, size);
  const title = timeTitle(trace.alignment);
  const panels = contents.map((content, i) => panelSpec(content, frame, heights[i]!, i === contents.length - 1 ? title : null));
  return stack(panels, size, headingRoom(size) + 10);
}

function framed(trace: Trace, size: Size) {
  const { from, to } = trace.alignment;
  const height = size.name === 'still' ? heightInStill(trace, size) : trace.panels.length > 1 ? size.stackedHeight : size.height;
  const contents = trace.panels.map((panel, index) => contentOf(trace, panel, index, size, height));
  const heights = trace.panels.map(({ kind }) => (kind === 'throttle_flag' ? FLAG_HEIGHT : height));
  return { contents, heights, frame: frameOf(contents, heights, timeScale(from, to, size.timeTicks), size) };
}

/** A still has one panel of readings, above it rows of phase names, below it perhaps a flag. */
function heightInStill(trace: Trace, size: Size): number {
  const flags = trace.panels.filter(({ kind }) => kind === 'throttle_flag').length;
  return size.height - namedIn(trace, size).length * rowHeight(size) - flags * (FLAG_HEIGHT + headingRoom(size) + 10);
}

/** Rows of phase names: a still has room for the first. */
function namedIn({ phases }: Trace, size: Size): Trace['phases'] {
  return size.name === 'still' ? phases.slice(0, 1) : phases;
}

/** Height that a tick of a still takes at least, px. */
const TICK_ROOM = 30;

function ticksOf({ panels }: Trace, size: Size, height: number): number {
  if (size.name === 'still') return Math.max(2, Math.floor(height / TICK_ROOM));
  return panels.length > 1 ? STACKED_TICKS : size.valueTicks;
}

/** Where the time axis lies in both sizes. */
export function alongOf(trace: Trace): Along {
  const { time, origins } = trace.alignment;
  const placed = (size: Size) => {
    const { frame } = framed(trace, size);
    return { x: frame.x, at: [frame.left, frame.width] as const };
  };
  const wide = placed(WIDE);
  const { unit, seconds } = time;
  return { unit, seconds, zero: origins[0] ?? 0, from: wide.x.from, to: wide.x.to, wide: wide.at, narrow: placed(NARROW).at };
}

function contentOf(trace: Trace, panel: TracePanel, index: number, size: Size, height: number): PanelContent {
  return {
    heading: withUnit(panel.heading, panel.unit),
    lines: panel.lines.map((line) => ({ ...line, ...toldOf(line, panel, trace, size) })),
    y: valueScale(panel, ticksOf(trace, size, height)),
    stepped: panel.stepped,
    labelled: true,
    limits: limitsOf(panel.lines),
    unit: panel.unit,
    named: index === 0 ? namedIn(trace, size) : [],
    shaded: trace.phases,
  };
}

/** What the label of a line says besides its name, where its panel does not say it of many. */
function toldOf(line: Line, panel: TracePanel, trace: Trace, size: Size): { readonly told?: string } {
  if (size.name !== 'wide' || trace.windowed) return {};
  const [name, words] = panel.rise ? RISE : (TOLD[panel.kind] ?? NOTHING);
  const text = name && trace.runs[line.run]!.told(name, line.channel, panel.asked);
  return text === undefined ? {} : { told: `${words} ${text}` };
}

const NOTHING = [undefined, ''] as const;
const RISE = ['temperature_rise', 'steady at'] as const;
const TOLD: Readonly<Partial<Record<QuantityKind, readonly [FigureName, string]>>> = {
  temperature: ['steady_temperature', 'steady at'],
  power: ['load_power', 'mean'],
  current: ['load_current', 'mean'],
  clock: ['mean_clock', 'mean'],
};
