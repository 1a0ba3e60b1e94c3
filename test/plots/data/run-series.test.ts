import { describe, expect, test } from 'vitest';
import { isUnreadable } from '../../../src/figures/read-figures-json.ts';
import { readSeries } from '../../../src/plots/data/read-series.ts';
import { riseOver } from '../../../src/plots/data/rise-over-ambient.ts';
import { runSeries } from '../../../src/plots/data/run-series.ts';
import type { RunSeries, SeriesChannel } from '../../../src/plots/data/series.ts';
import { spanMeans, spanOfMeans } from '../../../src/plots/drawing/lines/means.ts';
import { channel, logOf, subject } from '../subjects.ts';

const rated = subject('rated', { step: 1 });
const series = runSeries(rated);
const named = (from: RunSeries, name: string): SeriesChannel => from.channels.find((each) => each.name === name)!;

/** A subject of one channel of a kind, over the given times. */
function logged(times: readonly number[], values: readonly number[], step: number | null = 0.1) {
  const soc = channel('soc', 'temperature', '°C', values, step ?? 1, step === null ? { step: null } : {});
  return { ...rated, log: logOf(times, [soc], 1) };
}

describe('plots/data/run-series', () => {
  test('every channel with a reading, with what a plot needs of it; one without any is left out', () => {
    expect(series.channels.map(({ name, quantity, unit }) => [name, quantity, unit])).toEqual([
      ['soc', 'temperature', '°C'],
      ['core_clock', 'clock', 'Hz'],
      ['board', 'power', 'W'],
      ['flag', 'throttle_flag', '1'],
    ]);
    expect(named(series, 'soc')).toMatchObject({ limit: 80, step: 0.1, readings: 3001 });
    expect(named(series, 'board')).toMatchObject({ at: 'board input' });
    expect(named(series, 'core_clock')).not.toHaveProperty('rise');
  });

  test('load, span and phases in seconds since the first row; none where there are no phases', () => {
    expect(series).toMatchObject({ format: 1, run: 'rated', load: 300, span: 3000 });
    expect(series.phases.map(({ name, from, to }) => [name, from, to])).toEqual([
      ['idle', 0, 300],
      ['load', 300, 2700],
      ['cool-down', 2700, 3000],
    ]);
    expect(runSeries(subject('bare', { noPhases: true }))).toMatchObject({ load: null, phases: [] });
  });

  test('a phase that runs to the end of the log ends with it, so that JSON can say when', () => {
    const endless = {
      ...rated,
      derived: { ...rated.derived, phases: [{ ...rated.derived.phases[1]!, to: Number.POSITIVE_INFINITY }] },
    };
    expect(runSeries(endless).phases).toMatchObject([{ from: 300, to: 3000 }]);
  });

  test('goes through JSON unchanged, and is read back as what it was', () => {
    const text = JSON.stringify(series);
    expect(JSON.parse(text)).toEqual(series);
    const read = readSeries(text);
    if (isUnreadable(read)) throw new Error(read.unreadable);
    expect(read).toEqual(series);
  });

  test('all extremes are kept, times ascend, and there are at most four readings a column', () => {
    for (const { name, t, y } of series.channels.filter(({ quantity }) => quantity !== 'throttle_flag')) {
      const { values } = rated.log.channels.find((each) => each.name === name)!;
      const decimals = named(series, name).decimals;
      expect([name, Math.max(...y)]).toEqual([name, Number(Math.max(...values).toFixed(decimals))]);
      expect([name, Math.min(...y)]).toEqual([name, Number(Math.min(...values).toFixed(decimals))]);
      expect(t.every((time, i) => i === 0 || time >= t[i - 1]!)).toBe(true);
      expect(t.length).toBeLessThanOrEqual(4 * 640);
      expect([t[0], t.at(-1)]).toEqual([0, 3000]);
    }
  });

  test('what repeats is left out: a clock of two states takes few points and is the same steps', () => {
    const { t, y } = named(series, 'core_clock');
    expect(t.length).toBeLessThan(400);
    const at = (time: number) => y[t.findLastIndex((each) => each <= time)];
    for (const time of [0, 100, 299, 300, 1234, 2699, 2700, 3000])
      expect([time, at(time)]).toEqual([time, time >= 300 && time < 2700 ? 2.4e9 : 0.6e9]);
    expect(Math.max(...t.slice(1).map((time, i) => time - t[i]!))).toBeLessThan(3000 / 100);
  });

  test('a series of an hour at one reading a second stays small', () => {
    const hour = runSeries(subject('hour', { step: 1, idle: 300, load: 3600, coolDown: 300 }));
    expect(JSON.stringify(hour).length).toBeLessThan(150_000);
  });

  test('readings keep their own decimals, at most two more than their step', () => {
    const one = (values: readonly number[], step: number | null) => named(runSeries(logged([0, 1, 2], values, step)), 'soc');
    expect(one([20.1, 20.2, 20.30000000000001], 0.1)).toMatchObject({ decimals: 1, y: [20.1, 20.2, 20.3] });
    expect(one([20.15, 20.25, 20.35], 0.1)).toMatchObject({ decimals: 2, y: [20.15, 20.25, 20.35] });
    expect(one([20 / 3, 25 / 3, 30 / 3], 1)).toMatchObject({ decimals: 2, y: [6.67, 8.33, 10] });
    expect(one([20.25, 20.5, 21], null)).toMatchObject({ decimals: 2 });
  });

  test('times are in milliseconds, or finer where rows follow each other faster', () => {
    const times = (seconds: readonly number[], step: number) => {
      const base = logged(seconds, [1, 2, 3]);
      return named(runSeries({ ...base, log: { ...base.log, time: { ...base.log.time, step } } }), 'soc').t;
    };
    expect(times([0, 0.1 + 0.2, 1], 0.3)).toEqual([0, 0.3, 1]);
    expect(times([0, 0.000_25, 0.0005], 0.000_25)).toEqual([0, 0.000_25, 0.0005]);
  });

  test('a gap is a break, in the means too, which break where phases begin as well', () => {
    const gappy = named(runSeries(subject('gappy', { step: 1, gap: [900, 1200], scatter: 3 })), 'soc');
    expect(gappy.breaks).toHaveLength(1);
    const [at] = gappy.breaks;
    expect([gappy.t[at! - 1], gappy.t[at!]]).toEqual([899, 1201]);
    const means = gappy.means!;
    const around = means.breaks.map((position) => [means.t[position - 1]!, means.t[position]!]);
    const edges = [300, 1050, 2700];
    expect(around).toHaveLength(edges.length);
    for (const [index, edge] of edges.entries()) {
      expect(around[index]![0]).toBeLessThan(edge);
      expect(around[index]![1]).toBeGreaterThan(edge);
    }
  });

  test('rows without a reading of a channel are no readings of it', () => {
    const sparse = named(runSeries(logged([0, 1, 2, 3, 4], [20, Number.NaN, 21, Number.NaN, 22])), 'soc');
    expect(sparse).toMatchObject({ t: [0, 2, 4], y: [20, 21, 22], breaks: [], readings: 3 });
  });

  test('a flag is whether it is up now', () => {
    const { t, y, decimals } = named(series, 'flag');
    expect(decimals).toBe(0);
    expect(new Set(y)).toEqual(new Set([0, 1]));
    expect(t[y.indexOf(1)]).toBe(901);
  });

  test('the rise is over the ambient that the figures take, and is left out where none is known', () => {
    const soc = named(series, 'soc');
    const rises = riseOver(rated, rated.log.channels[0]!)!;
    expect(Math.max(...soc.rise!.y)).toBeCloseTo(Math.max(...rises), 1);
    expect(Math.abs(soc.rise!.y[0]! - (soc.y[0]! - 22))).toBeLessThanOrEqual(0.001);
    expect(named(runSeries(subject('bare', { noAmbient: true })), 'soc')).not.toHaveProperty('rise');
  });

  test('means are of all readings, in spans from the start of the load', () => {
    const noisy = subject('noisy', { step: 1, scatter: 3 });
    const { means } = named(runSeries(noisy), 'soc');
    const { values } = noisy.log.channels[0]!;
    const seconds = noisy.log.time.seconds.map((time) => time - 300);
    const span = spanOfMeans(3000);
    const all = spanMeans(seconds, values, [{ start: 0, end: values.length }], span)!;
    expect(means).toMatchObject({ span, scatter: expect.closeTo(all.scatter, 1) });
    expect(means!.y).toEqual(all.means.map(({ y }) => expect.closeTo(y, 1)));
    expect(means!.t).toEqual(all.means.map(({ x }) => expect.closeTo(x + 300, 2)));
    expect(named(series, 'core_clock')).not.toHaveProperty('means');
  });

  test('a log of one row, and one whose time stands still, are series too', () => {
    expect(runSeries({ ...logged([0], [20]), derived: { ...rated.derived, phases: [] } })).toMatchObject({
      span: 0,
      load: null,
      channels: [{ t: [0], y: [20], breaks: [] }],
    });
    expect(named(runSeries(logged([0, 0, 0], [20, 22, 21])), 'soc').y).toEqual(expect.arrayContaining([20, 22, 21]));
  });
});
