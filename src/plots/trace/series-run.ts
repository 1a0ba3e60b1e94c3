/** A run's series as a trace draws it: what a log gives, read back from thinned readings. */
import type { FigureMap } from '../../figures/figure.ts';
import { figureIn, figureText, plainName } from '../data/figure-text.ts';
import type { RunSeries, SeriesChannel, SeriesLine, SeriesMeans, SeriesPoints } from '../data/series.ts';
import type { Segment } from '../drawing/lines/segments.ts';
import type { StoredMeans, TraceChannel, TraceReadings, TraceRun } from '../drawing/lines/trace-run.ts';

export interface SeriesSubject {
  readonly alias: string;
  readonly title: string;
  readonly series: RunSeries;
  /** The run's figures, for the text alternative: without them it tells the range of what is drawn. */
  readonly figures?: FigureMap;
}

export function seriesRun({ alias, title, series, figures }: SeriesSubject): TraceRun {
  return {
    alias,
    title,
    load: series.load,
    begin: 0,
    end: series.span,
    phases: series.phases,
    told: (figure, channel, unit) => (figures ? figureText(figureIn(figures, figure, channel), unit) : undefined),
  };
}

export function seriesChannel(channel: SeriesChannel): TraceChannel {
  const { name, quantity, unit, decimals, step, limit, rise, readings } = channel;
  return {
    name,
    label: channel.label ?? plainName(name),
    quantity,
    unit,
    step: step ?? 10 ** -decimals,
    ...(limit === undefined ? {} : { limit }),
    readings: () => readingsOf(channel, readings),
    rise: () => (rise ? readingsOf(rise, readings) : null),
  };
}

function readingsOf(line: SeriesLine, count: number = line.t.length): TraceReadings {
  return {
    t: Float64Array.from(line.t),
    y: Float64Array.from(line.y),
    segments: segmentsOf(line),
    count,
    means: line.means ? meansOf(line.means) : null,
  };
}

function segmentsOf({ t, breaks }: SeriesPoints): Segment[] {
  const starts = t.length > 0 ? [0, ...breaks] : [];
  return starts.map((start, s) => ({ start, end: starts[s + 1] ?? t.length }));
}

function meansOf(means: SeriesMeans): StoredMeans {
  const points = segmentsOf(means).flatMap(({ start, end }, segment) =>
    Array.from({ length: end - start }, (_, i) => ({ x: means.t[start + i]!, y: means.y[start + i]!, segment })),
  );
  return { means: points, scatter: means.scatter, span: means.span };
}
