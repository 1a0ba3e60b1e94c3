/** Readings over time: runs and channels on one time axis, as panels of lines. */
import type { Channel, QuantityKind } from '../intake/log.ts';
import { error, type Problem } from '../problem.ts';
import type { PlotRequest } from '../register/requests.ts';
import { type Alignment, align } from './align.ts';
import type { PlotSubject } from './drawn.ts';
import { throttledNow } from './flags.ts';
import { type Mean, scatterMeans, spanOfMeans } from './means.ts';
import { MOST_LINES } from './palette.ts';
import { type PhaseRow, phaseRows } from './phase-marks.ts';
import type { Plan, Planned } from './plan.ts';
import { riseOver } from './rise.ts';
import { presentReadings, type Segment, segments } from './segments.ts';
import { WIDE } from './size.ts';
import { type Slot, slotsOf } from './slots.ts';
import { channelStyle, stylesOf } from './styles.ts';
import { runName } from './told.ts';
import { layOutTrace } from './trace-layout.ts';
import { traceCsv, traceTable } from './trace-tables.ts';
import { traceAlt, traceMethod, traceTitle } from './trace-words.ts';
import { valueScale } from './value-scale.ts';
import { type DisplayUnit, decimalsOf, displayUnit, titleOf } from './wording.ts';

/** One line: the readings of a channel in one run. */
export interface Line {
  /** Position of its run among the subjects. */
  readonly run: number;
  readonly channel: string;
  /** What its end is labelled with. */
  readonly label: string;
  /** Style, from 0. */
  readonly k: number;
  /** Time in the unit of the axis, since the origin. */
  readonly x: Float64Array;
  /** In the unit of the panel. */
  readonly y: Float64Array;
  readonly segments: readonly Segment[];
  /** Means to draw over readings that scatter. */
  readonly over: readonly Mean[] | null;
  /** Decimals that the channel's readings have in that unit. */
  readonly decimals: number;
  /** Throttle limit in the unit of the panel. */
  readonly limit?: number;
}

export interface TracePanel {
  readonly kind: QuantityKind;
  /** Quantity and what it is of: "Temperature". */
  readonly heading: string;
  readonly unit: string;
  readonly rise: boolean;
  /** True where a reading holds until the next. */
  readonly stepped: boolean;
  readonly lines: readonly Line[];
}

export interface Trace {
  /** Span of the means that are drawn over readings that scatter, s. */
  readonly meanSpan: number;
  readonly panels: readonly TracePanel[];
  readonly alignment: Alignment;
  readonly phases: readonly PhaseRow[];
  readonly subjects: readonly PlotSubject[];
}

/** Plans the readings of the channels asked for, in all runs, over time since the start of the load. */
export function planTrace(request: PlotRequest, subjects: readonly PlotSubject[]): Planned {
  const { slots, problems } = slotsOf(request, subjects);
  const lacking = request.rise ? withoutAmbient(request, slots, subjects) : [];
  if (problems.length > 0 || lacking.length > 0) return [...problems, ...lacking];
  const trace = traceOf(request, slots, subjects);
  return {
    title: request.title ?? traceTitle(trace),
    alt: traceAlt(trace),
    method: traceMethod(trace),
    csv: traceCsv(trace),
    table: traceTable(trace),
    layOut: (size) => layOutTrace(trace, size),
  } satisfies Plan;
}

function withoutAmbient(request: PlotRequest, slots: readonly Slot[], subjects: readonly PlotSubject[]): Problem[] {
  if (!slots.some(({ channels }) => channels[0]?.quantity === 'temperature')) return [];
  const channel = (subject: PlotSubject) => subject.log.channels.find((each) => each.quantity === 'temperature');
  return subjects
    .filter((subject) => channel(subject) && riseOver(subject, channel(subject)!) === null)
    .map((subject) =>
      error('no-ambient', request.place, `the run ${runName(subject)} has no ambient, so its rise cannot be drawn`, {
        expected: 'a channel of quantity `ambient`, or `ambient` under its conditions',
        remedy: 'state the ambient, or draw the temperature itself',
      }),
    );
}

function traceOf(request: PlotRequest, slots: readonly Slot[], subjects: readonly PlotSubject[]): Trace {
  const alignment = align(subjects);
  const groups = subjects.length === 1 ? grouped(slots) : slots.map((slot) => [slot]);
  const panels = groups.map((group) => panelOf(group, request, subjects, alignment, groups));
  const meanSpan = spanOfMeans((alignment.to - alignment.from) * alignment.time.seconds);
  return {
    panels: panels.map((panel) => withMeans(panel, meanSpan / alignment.time.seconds)),
    alignment,
    phases: phaseRows(subjects, alignment, stylesOf(request)),
    subjects,
    meanSpan,
  };
}

/** Of one run: channels of one quantity share a panel, and the ambient stands with the temperatures. */
function grouped(slots: readonly Slot[]): Slot[][] {
  const groups = new Map<string, Slot[]>();
  for (const slot of slots) {
    const { quantity, unit } = slot.channels[0]!;
    const family = quantity === 'ambient' ? 'temperature' : quantity === 'other' ? `other ${slot.name}` : quantity;
    const key = `${family} ${unit}`;
    groups.set(key, [...(groups.get(key) ?? []), slot]);
  }
  return [...groups.values()].flatMap((group) =>
    Array.from({ length: Math.ceil(group.length / MOST_LINES) }, (_, part) =>
      group.slice(part * MOST_LINES, (part + 1) * MOST_LINES),
    ),
  );
}

function panelOf(
  group: readonly Slot[],
  request: PlotRequest,
  subjects: readonly PlotSubject[],
  alignment: Alignment,
  groups: readonly (readonly Slot[])[],
): TracePanel {
  const slot = group.find(({ channels }) => channels[0]!.quantity !== 'ambient') ?? group[0]!;
  const { quantity: kind, unit: canonical } = slot.channels[0]!;
  const rise = request.rise && kind === 'temperature';
  const display = kind === 'throttle_flag' ? { unit: '1', divisor: 1 } : displayUnit(kind, rise ? 'K' : canonical, largest(group));
  const styles = stylesOf(request);
  const lines = group.flatMap(({ name, channels }, s) =>
    channels.map((channel, r) => {
      const k = subjects.length === 1 ? channelStyle(styles[0]!, s) : styles[r]!;
      const label = subjects.length > 1 || (group.length === 1 && groups.length === 1) ? subjects[r]!.alias || name : name;
      return { ...lineOf(subjects[r]!, channel, alignment, r, { rise, display }), k, label };
    }),
  );
  const stepped = kind === 'throttle_flag' || kind === 'clock';
  return { kind, heading: headingOf(slot, kind, rise, groups), unit: display.unit, rise, stepped, lines };
}

/** Lays means over the lines of a panel whose readings scatter; `span` in the unit of time. */
function withMeans(panel: TracePanel, span: number): TracePanel {
  if (panel.stepped) return panel;
  const { from, to } = valueScale(panel, WIDE.valueTicks);
  return {
    ...panel,
    lines: panel.lines.map((line) => ({ ...line, over: scatterMeans(line.x, line.y, line.segments, span, to - from) })),
  };
}

function headingOf(slot: Slot, kind: QuantityKind, rise: boolean, groups: readonly (readonly Slot[])[]): string {
  if (kind === 'other') return slot.name.replaceAll('_', ' ');
  const title = rise ? 'Rise over ambient' : titleOf(kind);
  const alike = groups.filter((group) => group.some(({ channels }) => channels[0]!.quantity === kind));
  return alike.length > 1 ? `${title} of ${slot.name}` : title;
}

function largest(group: readonly Slot[]): number {
  let most = 0;
  for (const { channels } of group) {
    for (const { values } of channels) for (const value of values) if (Math.abs(value) > most) most = Math.abs(value);
  }
  return most;
}

function lineOf(
  subject: PlotSubject,
  channel: Channel,
  alignment: Alignment,
  index: number,
  { rise, display }: { readonly rise: boolean; readonly display: DisplayUnit },
): Omit<Line, 'k' | 'label'> {
  const over = rise && channel.quantity === 'temperature';
  const values = over ? riseOver(subject, channel)! : channel.quantity === 'throttle_flag' ? throttledNow(channel) : channel.values;
  const origin = alignment.origins[index]!;
  const times = subject.log.time.seconds.map((seconds) => (seconds - origin) / alignment.time.seconds);
  const { x, y } = presentReadings(
    times,
    values.map((value) => value / display.divisor),
  );
  const limit = over ? undefined : subject.context.device.throttleAt[channel.name]?.value;
  return {
    run: index,
    channel: channel.name,
    x,
    y,
    segments: segments(x),
    over: null,
    decimals: channel.quantity === 'throttle_flag' ? 0 : decimalsOf((channel.step ?? 0.01) / display.divisor),
    ...(limit === undefined ? {} : { limit: limit / display.divisor }),
  };
}
