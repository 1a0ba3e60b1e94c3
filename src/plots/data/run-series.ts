/** A run → its series: what can be drawn of it, small enough to travel. */
import type { Channel } from '../../intake/log.ts';
import type { PlotSubject } from '../drawing/drawn.ts';
import { loadStart } from '../drawing/lines/align.ts';
import { type SpanMeans, scatters, spanMeans, spanOfMeans } from '../drawing/lines/means.ts';
import { cutAt, presentReadings, type Segment, segments } from '../drawing/lines/segments.ts';
import { thin } from '../drawing/lines/thin.ts';
import { extent } from '../drawing/value-scale.ts';
import { decimalsOf } from '../drawing/wording.ts';
import { riseOver } from './rise-over-ambient.ts';
import type { RunSeries, SeriesChannel, SeriesLine, SeriesMeans, SeriesPoints } from './series.ts';
import { throttledNow } from './throttle-flags.ts';

/**
 * Columns that a run's whole length is thinned to: twice those of a wide drawing, so that a window of half a run still has a
 * reading for every column of it.
 */
const COLUMNS = 640;

/** Of readings that repeat their neighbours at least one is kept in each of so many parts of a run, for tables and for windows. */
const KEPT = 160;

/** Decimals of a time in s: milliseconds, or microseconds where rows follow each other faster than 10 ms. */
const TIME_DECIMALS = 3;
const FINE_TIME_DECIMALS = 6;
const FINE_STEP = 0.01;

/** A correction or a change of units leaves at most so many decimals beyond those of the readings' step. */
const EXTRA_DECIMALS = 2;

/** Every channel with a reading, thinned for drawing; figures are never computed from it. The unit of time is s, values are canonical. */
export function runSeries(subject: PlotSubject): RunSeries {
  const { log, derived, context } = subject;
  const timing = timingOf(subject);
  const round = rounding(timing.decimals);
  const load = loadStart(subject);
  return {
    format: 1,
    run: context.run,
    load: load === undefined ? null : round(load),
    span: round(timing.span),
    phases: derived.phases
      .filter(({ from, to }) => from < Math.min(to, timing.span))
      .map(({ name, from, to, inferred }) => ({ name, from: round(from), to: round(Math.min(to, timing.span)), inferred })),
    channels: log.channels.flatMap((channel) => channelSeries(subject, channel, timing)),
  };
}

interface Timing {
  readonly seconds: Float64Array;
  readonly span: number;
  readonly decimals: number;
  /** s since the first row at which spans of means begin. */
  readonly origin: number;
  /** Where phases begin and end, s since the first row. */
  readonly edges: readonly number[];
}

function timingOf(subject: PlotSubject): Timing {
  const { seconds, step } = subject.log.time;
  const decimals = step !== null && step < FINE_STEP ? FINE_TIME_DECIMALS : TIME_DECIMALS;
  const edges = subject.derived.phases.flatMap(({ from, to }) => [from, to]);
  return { seconds, span: seconds.at(-1) ?? 0, decimals, origin: loadStart(subject) ?? 0, edges };
}

function channelSeries(subject: PlotSubject, channel: Channel, timing: Timing): SeriesChannel[] {
  const { name, label, quantity, unit, at, step, values } = channel;
  const readings = values.filter((value) => Number.isFinite(value));
  if (readings.length === 0) return [];
  const flag = quantity === 'throttle_flag';
  const decimals = flag ? 0 : readingDecimals(readings, step);
  const limit = subject.context.device.throttleAt[name]?.value;
  const rise = quantity === 'temperature' ? riseOver(subject, channel) : null;
  const line = seriesLine(flag ? throttledNow(channel) : values, decimals, timing);
  return [
    {
      name,
      ...(label === undefined ? {} : { label }),
      quantity,
      unit,
      ...(at === undefined ? {} : { at }),
      decimals,
      ...(step === null ? {} : { step }),
      readings: readings.length,
      ...(limit === undefined ? {} : { limit }),
      ...line,
      ...(rise?.some((value) => Number.isFinite(value)) ? { rise: seriesLine(rise, decimals + 1, timing) } : {}),
    },
  ];
}

/** Decimals in which all readings can be written; at most two more than their step shows. */
function readingDecimals(readings: Float64Array, step: number | null): number {
  const least = decimalsOf(step ?? 0.01);
  const fits = (decimals: number) =>
    readings.every((value) => Math.abs(Number(value.toFixed(decimals)) - value) < 1e-9 * (1 + Math.abs(value)));
  const found = Array.from({ length: EXTRA_DECIMALS }, (_, extra) => least + extra).find(fits);
  return found ?? least + EXTRA_DECIMALS;
}

function rounding(decimals: number): (value: number) => number {
  return (value) => Number(value.toFixed(decimals)) + 0;
}

function seriesLine(
  values: Float64Array,
  decimals: number,
  { seconds, span, decimals: timeDecimals, origin, edges }: Timing,
): SeriesLine {
  const { x, y } = presentReadings(seconds, values);
  const parts = segments(x);
  const grid = { from: 0, to: span || 1, columns: COLUMNS };
  const kept = parts.map(({ start, end }) =>
    withoutRepeats(
      thin(x, y, grid, start, end).map((i) => [x[i]!, y[i]!] as const),
      span / KEPT,
    ),
  );
  const points = pointsOf(kept, timeDecimals, decimals);
  const means = meansOf(x, y, cutAt(x, parts, edges), { span, origin });
  return means ? { ...points, means: seriesMeans(means, { origin, span, timeDecimals, decimals }) } : points;
}

type Stretch = readonly (readonly [t: number, y: number])[];

/** Drops readings that repeat the one before and the one behind: the line stays the same. None is dropped `longest` s after one that was kept. */
function withoutRepeats(stretch: Stretch, longest: number): Stretch {
  let last = Number.NEGATIVE_INFINITY;
  return stretch.filter(([t, y], i) => {
    const repeats = y === stretch[i - 1]?.[1] && y === stretch[i + 1]?.[1];
    if (repeats && t - last < longest) return false;
    last = t;
    return true;
  });
}

function pointsOf(stretches: readonly Stretch[], timeDecimals: number, decimals: number): SeriesPoints {
  const [time, value] = [rounding(timeDecimals), rounding(decimals)];
  const all = stretches.flat();
  let at = 0;
  const ends = stretches.map((stretch) => (at += stretch.length));
  return { t: all.map(([t]) => time(t)), y: all.map(([, y]) => value(y)), breaks: ends.slice(0, -1) };
}

/** Means where any plot could draw them: an axis is at least as long as the line is high. */
function meansOf(
  x: Float64Array,
  y: Float64Array,
  parts: readonly Segment[],
  { span, origin }: { readonly span: number; readonly origin: number },
): SpanMeans | null {
  const found = spanMeans(
    x.map((seconds) => seconds - origin),
    y,
    parts,
    spanOfMeans(span),
  );
  const [low, high] = extent([{ y }]);
  return found && high > low && scatters(found, high - low) ? found : null;
}

function seriesMeans(
  { means, scatter }: SpanMeans,
  {
    origin,
    span,
    timeDecimals,
    decimals,
  }: { readonly origin: number; readonly span: number; readonly timeDecimals: number; readonly decimals: number },
): SeriesMeans {
  const count = Math.max(0, ...means.map(({ segment }) => segment + 1));
  const stretches = Array.from({ length: count }, (_, s) =>
    means.filter(({ segment }) => segment === s).map(({ x, y }) => [x + origin, y] as const),
  );
  return { ...pointsOf(stretches, timeDecimals, decimals + 1), span: spanOfMeans(span), scatter: rounding(decimals + 1)(scatter) };
}
