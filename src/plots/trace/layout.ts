/** Where everything of a trace stands, and its specification. */

import { stack } from '../drawing/config.ts';
import { limitsOf } from '../drawing/labels/limit-marks.ts';
import { timeTitle } from '../drawing/lines/align.ts';
import { frameOf, headingRoom, type PanelContent, panelSpec } from '../drawing/panel.ts';
import type { Size } from '../drawing/size.ts';
import { timeScale } from '../drawing/ticks.ts';
import { valueScale } from '../drawing/value-scale.ts';
import type { Spec } from '../drawing/vega.ts';
import { withUnit } from '../drawing/wording.ts';
import type { Trace, TracePanel } from './panels.ts';

/** About how many values are marked on a stacked panel. */
const STACKED_TICKS = 4;
/** A flag has two states and needs no more, px. */
const FLAG_HEIGHT = 40;

/** The specification of a trace in a size. */
export function layOutTrace(trace: Trace, size: Size): Spec {
  const { from, to } = trace.alignment;
  const contents = trace.panels.map((panel, index) => contentOf(trace, panel, index, size));
  const frame = frameOf(contents, timeScale(from, to, size.timeTicks), size);
  const height = contents.length > 1 ? size.stackedHeight : size.height;
  const title = timeTitle(trace.alignment);
  const heights = trace.panels.map(({ kind }) => (kind === 'throttle_flag' ? FLAG_HEIGHT : height));
  const panels = contents.map((content, i) => panelSpec(content, frame, heights[i]!, i === contents.length - 1 ? title : null));
  return stack(panels, size, headingRoom(size) + 10);
}

function contentOf(trace: Trace, panel: TracePanel, index: number, size: Size): PanelContent {
  return {
    heading: withUnit(panel.heading, panel.unit),
    lines: panel.lines,
    y: valueScale(panel, trace.panels.length > 1 ? STACKED_TICKS : size.valueTicks),
    stepped: panel.stepped,
    labelled: true,
    limits: limitsOf(panel.lines),
    unit: panel.unit,
    named: index === 0 ? trace.phases : [],
    shaded: trace.phases,
  };
}
