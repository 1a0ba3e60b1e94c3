/** Readings over time: runs and channels on one time axis, as panels of lines. From logs and from series alike; free of Node. */
import type { QuantityKind } from '../../intake/log.ts';
import { type PhaseRow, phaseRows } from '../drawing/labels/phase-marks.ts';
import { type Alignment, align, type Window } from '../drawing/lines/align.ts';
import { type Mean, scatters, spanMeans, spanOfMeans } from '../drawing/lines/means.ts';
import { cutAt, type Segment } from '../drawing/lines/segments.ts';
import type { TraceChannel, TraceReadings, TraceRun } from '../drawing/lines/trace-run.ts';
import { MOST_LINES } from '../drawing/palette.ts';
import { WIDE } from '../drawing/size.ts';
import { channelStyle } from '../drawing/styles.ts';
import { valueScale } from '../drawing/value-scale.ts';
import { type DisplayUnit, decimalsOf, displayUnit, inDisplay, titleOf } from '../drawing/wording.ts';
import { readingsWithin } from './window.ts';

/** One line: the readings of a channel in one run. */
export interface Line {
  /** Position of its run among those of the trace. */
  readonly run: number;
  readonly channel: string;
  /** The channel's name for readers. */
  readonly channelLabel: string;
  /** What its end is labelled with. */
  readonly label: string;
  /** Style, from 0. */
  readonly k: number;
  /** Time in the unit of the axis, since the origin. */
  readonly x: Float64Array;
  /** In the unit of the panel. */
  readonly y: Float64Array;
  readonly segments: readonly Segment[];
  /** How many readings there are, thinned ones included. */
  readonly count: number;
  /** Means to draw over readings that scatter, and their span, s. */
  readonly over: readonly Mean[] | null;
  readonly meanSpan: number;
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
  /** The unit, where it was asked for: figures beside the panel are then told in it. */
  readonly asked?: string;
  readonly rise: boolean;
  /** True where a reading holds until the next. */
  readonly stepped: boolean;
  readonly lines: readonly Line[];
}

export interface Trace {
  readonly panels: readonly TracePanel[];
  readonly alignment: Alignment;
  /** True where only a part of the time axis is drawn. */
  readonly windowed: boolean;
  readonly phases: readonly PhaseRow[];
  readonly runs: readonly TraceRun[];
}

/** One thing to draw of every run: the channel of each run, in order; null where a run has none. */
export interface TraceSlot {
  readonly name: string;
  readonly channels: readonly (TraceChannel | null)[];
}

/** How a trace is asked for. */
export interface TraceLook {
  /** Temperatures as rise over ambient. */
  readonly rise: boolean;
  /** Style of each run, from 0. */
  readonly styles: readonly number[];
  /** The part of the time axis to draw, s since its 0; all of it when left out. */
  readonly window?: Window;
  /** Spellings of units: a panel is in the first that its quantity can be given in. */
  readonly units?: readonly string[];
}

/** What all panels share. */
interface Ground {
  readonly runs: readonly TraceRun[];
  readonly look: TraceLook;
  readonly alignment: Alignment;
  readonly groups: readonly (readonly TraceSlot[])[];
}

/** Panels of the slots, each of which some run has a channel of; a line without readings (in the window) is left out. */
export function traceOf(slots: readonly TraceSlot[], runs: readonly TraceRun[], look: TraceLook): Trace {
  const alignment = align(runs, look.window);
  const groups = runs.length === 1 ? grouped(slots) : slots.map((slot) => [slot]);
  const ground: Ground = { runs, look, alignment, groups };
  const span = spanOfMeans((alignment.to - alignment.from) * alignment.time.seconds);
  return {
    panels: groups.map((group) => panelOf(group, ground, span)),
    alignment,
    windowed: look.window !== undefined,
    phases: phaseRows(runs, alignment, look.styles),
    runs,
  };
}

/** The first channel that a slot has: all of them are of one quantity and unit. */
function firstOf({ channels }: TraceSlot): TraceChannel {
  const first = channels.find((channel) => channel !== null);
  if (!first) throw new RangeError('a slot of a trace without a channel');
  return first;
}

/** Of one run: channels of one quantity share a panel, and the ambient stands with the temperatures. */
function grouped(slots: readonly TraceSlot[]): TraceSlot[][] {
  const groups = new Map<string, TraceSlot[]>();
  for (const slot of slots) {
    const { quantity, unit } = firstOf(slot);
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

/** A line before its panel's unit and axis are known. */
interface Raw {
  readonly channel: TraceChannel;
  readonly run: number;
  readonly k: number;
  readonly label: string;
  readonly over: boolean;
  readonly readings: TraceReadings;
}

function panelOf(group: readonly TraceSlot[], ground: Ground, span: number): TracePanel {
  const slot = group.find((each) => firstOf(each).quantity !== 'ambient') ?? group[0]!;
  const { quantity: kind, unit: canonical } = firstOf(slot);
  const rise = ground.look.rise && kind === 'temperature';
  const raw = group.flatMap((each, index) => rawLines(each, index, group.length, ground));
  const largest = raw.reduce((most, { readings }) => readings.y.reduce((high, value) => Math.max(high, Math.abs(value)), most), 0);
  const display =
    kind === 'throttle_flag' ? { unit: '1', divisor: 1 } : displayUnit(kind, rise ? 'K' : canonical, largest, ground.look.units);
  const stepped = kind === 'throttle_flag' || kind === 'clock';
  const lines = raw.map((each) => lineOf(each, display, ground));
  const asked = ground.look.units?.includes(display.unit) ? { asked: display.unit } : {};
  const bare = { kind, heading: headingOf(slot, kind, rise, ground), unit: display.unit, ...asked, rise, stepped, lines };
  return stepped ? bare : withMeans(bare, raw, display, ground, span);
}

function rawLines({ channels }: TraceSlot, index: number, slots: number, { runs, look, alignment, groups }: Ground): Raw[] {
  return channels.flatMap((channel, run): Raw[] => {
    if (!channel) return [];
    const over = look.rise && channel.quantity === 'temperature';
    const whole = over ? channel.rise() : channel.readings();
    const origin = alignment.origins[run]!;
    const readings = whole && look.window ? readingsWithin(whole, look.window, origin) : whole;
    if (!readings || readings.t.length === 0) return [];
    const k = runs.length === 1 ? channelStyle(look.styles[0]!, index) : look.styles[run]!;
    const own = channel.label;
    const label = runs.length > 1 || (slots === 1 && groups.length === 1) ? runs[run]!.alias || own : own;
    return [{ channel, run, k, label, over, readings }];
  });
}

function lineOf({ channel, run, k, label, over, readings }: Raw, display: DisplayUnit, { alignment }: Ground): Line {
  const { t, y, segments, count } = readings;
  const origin = alignment.origins[run]!;
  const limit = over ? undefined : channel.limit;
  const shown = y.map((value) => inDisplay(value, display));
  return {
    run,
    channel: channel.name,
    channelLabel: channel.label,
    label,
    k,
    x: t.map((seconds) => (seconds - origin) / alignment.time.seconds),
    y: shown,
    segments,
    count,
    over: null,
    meanSpan: 0,
    decimals: channel.quantity === 'throttle_flag' ? 0 : shownDecimals(shown, channel.step / display.divisor),
    ...(limit === undefined ? {} : { limit: Number(inDisplay(limit, display).toPrecision(DIGITS_SURE)) }),
  };
}

/** Digits of a double that a change of units leaves right. */
const DIGITS_SURE = 12;

/** More decimals than these are shown only where readings need them: a clock of 2.2 GHz may be logged to the hertz. */
const USUAL_DECIMALS = 3;

function shownDecimals(values: Float64Array, step: number): number {
  const most = decimalsOf(step);
  const fits = (decimals: number) =>
    values.every((value) => Math.abs(Number(value.toFixed(decimals)) - value) <= 1e-9 * Math.abs(value));
  let decimals = Math.min(most, USUAL_DECIMALS);
  while (decimals < most && !fits(decimals)) decimals += 1;
  return decimals;
}

/** Lays means over the lines of a panel whose readings scatter; `span` in s. */
function withMeans(
  panel: TracePanel,
  raw: readonly Raw[],
  display: DisplayUnit,
  { alignment, runs }: Ground,
  span: number,
): TracePanel {
  if (panel.lines.length === 0) return panel;
  const { from, to } = valueScale(panel, WIDE.valueTicks);
  const { seconds } = alignment.time;
  const lines = panel.lines.map((line, i) => {
    const { means } = raw[i]!.readings;
    if (means === 'all') {
      const origin = alignment.origins[line.run]!;
      const edges = runs[line.run]!.phases.flatMap(({ from: begin, to: end }) =>
        [begin, end].map((edge) => (edge - origin) / seconds),
      );
      const found = spanMeans(line.x, line.y, cutAt(line.x, line.segments, edges), span / seconds);
      return found && scatters(found, to - from) ? { ...line, over: found.means, meanSpan: span } : line;
    }
    if (!means || !scatters({ scatter: means.scatter / display.divisor }, to - from)) return line;
    const origin = alignment.origins[line.run]!;
    const over = means.means.map((mean) => ({ ...mean, x: (mean.x - origin) / seconds, y: inDisplay(mean.y, display) }));
    return { ...line, over, meanSpan: means.span };
  });
  return { ...panel, lines };
}

function headingOf(slot: TraceSlot, kind: QuantityKind, rise: boolean, { groups }: Ground): string {
  if (kind === 'other') return firstOf(slot).label;
  const title = rise ? 'Rise over ambient' : titleOf(kind);
  const alike = groups.filter((group) => group.some((each) => firstOf(each).quantity === kind));
  return alike.length > 1 ? `${title} of ${firstOf(slot).label}` : title;
}
