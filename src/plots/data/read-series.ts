/** A run's series read from JSON of unknown origin: what `run-series.ts` makes, checked. */
import { type Json, readable, type Unreadable } from '../../figures/json.ts';
import { QUANTITY_KINDS } from '../../intake/log.ts';
import type { RunSeries, SeriesChannel, SeriesLine, SeriesMeans, SeriesPoints } from './series.ts';

/** Reads `runs/<id>/series.json`. Never throws: a text that is no such file comes back as the reason in words. */
export function readSeries(text: string): RunSeries | Unreadable {
  return readable(text, seriesOf);
}

function seriesOf(file: Json): RunSeries {
  return {
    format: 1,
    run: file.at('run').text(),
    load: file.at('load').nullable()?.number() ?? null,
    span: file.at('span').number(),
    phases: file
      .at('phases')
      .list()
      .map((phase) => ({
        name: phase.at('name').text(),
        from: phase.at('from').number(),
        to: phase.at('to').number(),
        inferred: phase.at('inferred').flag(),
      })),
    channels: file.at('channels').list().map(channelOf),
  };
}

function channelOf(channel: Json): SeriesChannel {
  const at = channel.maybe('at')?.text();
  const label = channel.maybe('label')?.text();
  const step = channel.maybe('step')?.positive();
  const readings = channel.maybe('readings')?.number();
  const limit = channel.maybe('limit')?.number();
  const rise = channel.maybe('rise');
  return {
    name: channel.at('name').text(),
    ...(label === undefined ? {} : { label }),
    quantity: channel.at('quantity').oneOf(QUANTITY_KINDS),
    unit: channel.at('unit').text(),
    ...(at === undefined ? {} : { at }),
    decimals: channel.at('decimals').number(),
    ...(step === undefined ? {} : { step }),
    ...(readings === undefined ? {} : { readings }),
    ...(limit === undefined ? {} : { limit }),
    ...lineOf(channel),
    ...(rise ? { rise: lineOf(rise) } : {}),
  };
}

function lineOf(line: Json): SeriesLine {
  const means = line.maybe('means');
  return { ...pointsOf(line), ...(means ? { means: meansOf(means) } : {}) };
}

function meansOf(means: Json): SeriesMeans {
  return { ...pointsOf(means), span: means.at('span').positive(), scatter: means.at('scatter').number() };
}

function pointsOf(points: Json): SeriesPoints {
  const t = points.at('t').numbers();
  const y = points.at('y').numbers();
  if (t.length !== y.length) points.at('y').refuse(`as many numbers as there are times, ${t.length},`);
  const breaks = points.at('breaks').numbers();
  if (breaks.some((at, i) => !Number.isInteger(at) || at <= (breaks[i - 1] ?? 0) || at >= t.length))
    points.at('breaks').refuse('ascending positions within the line');
  return { t, y, breaks };
}
