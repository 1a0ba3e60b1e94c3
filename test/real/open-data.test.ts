// Measurements that nobody here made: open data that the npm package vega-datasets (3.2.1) carries, each with its own source and
// licence in that package's datapackage.json. They are read where the package keeps them; row counts, extremes and means are computed
// here by nothing but splitting lines, and compared.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { RunContext } from '../../src/figures/context.ts';
import { derive } from '../../src/figures/derive.ts';
import { isPresent } from '../../src/figures/figure.ts';
import { inspect } from '../../src/intake/inspect.ts';
import { read } from '../../src/intake/read.ts';
import { channel, declare, RUN } from '../intake/declare.ts';

const folder = join(import.meta.dirname, '..', '..', 'node_modules', 'vega-datasets', 'data');
const open = (name: string) => readFileSync(join(folder, name));
const described = JSON.parse(readFileSync(join(folder, '..', 'datapackage.json'), 'utf8')).resources as {
  path: string;
  bytes: number;
}[];

/** A column of a plain comma-separated file, by its own means. */
function column(name: string, title: string): number[] {
  const [head = '', ...lines] = open(name).toString('utf8').trimEnd().split(/\r?\n/);
  const at = head.split(',').indexOf(title);
  return lines.map((line) => Number.parseFloat(line.split(',')[at]!));
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

describe('real: hourly normals of Seattle (NOAA NCDC, U.S. Climate Normals 1981–2010)', () => {
  const name = 'seattle-weather-hourly-normals.csv';
  const result = read(
    open(name),
    declare([channel('air', 'temperature', 'temperature', { unit: '°C' })], { file: name }),
    `data/${name}`,
  );

  it('is the file that the package describes', () => {
    expect(open(name).length).toBe(described.find(({ path }) => path === name)!.bytes);
  });

  it('has one row an hour and every reading', () => {
    const independent = column(name, 'temperature');
    const log = result.log!;
    expect(log.rows).toBe(independent.length);
    expect(log.setAside).toEqual([]);
    expect([...log.channels[0]!.values]).toEqual(independent);
    expect(log.channels[0]).toMatchObject({ missing: 0, step: 0.1 });
    expect(log.time).toMatchObject({ format: 'iso8601', column: 'date', step: 3600, start: null });
    expect(log.time.seconds.at(-1)! / 3600).toBe(
      Math.round((Date.parse('2010-12-31T23:00:00Z') - Date.parse('2010-01-01T01:00:00Z')) / 3.6e6),
    );
  });

  it('has the annual mean that NOAA publishes for the station, 52.3 °F (from memory)', () => {
    expect(Math.abs(mean([...result.log!.channels[0]!.values]) - (52.3 - 32) / 1.8)).toBeLessThan(0.5);
  });

  it('yields figures whose peak is the greatest reading of the phase', () => {
    const context: RunContext = {
      run: 'normals',
      device: { id: 'air', throttleAt: {} },
      specimen: 'no-1',
      instruments: {},
      setting: {},
      phases: [{ name: 'load', from: 0, to: Number.POSITIVE_INFINITY, place: RUN }],
    };
    const peak = derive(result.log!, context).figures.get('peak_temperature')!;
    expect(isPresent(peak) && peak.quantity).toMatchObject({ value: Math.max(...column(name, 'temperature')), unit: '°C' });
  });

  it('is not taken for degrees without being told', () => {
    const found = inspect(open(name), name).columns.find((each) => each.column === 'temperature')!;
    expect(found).toMatchObject({ quantity: 'temperature', suggestion: '°C' });
    expect(found.unit).toBeUndefined();
    expect(read(open(name), declare([channel('air', 'temperature', 'temperature')]), name).problems[0]).toMatchObject({
      rule: 'unit-missing',
    });
  });
});

describe('real: daily weather of Seattle 2012–2015 (NOAA NCDC)', () => {
  const name = 'seattle-weather.csv';
  const channels = [
    channel('high', 'temperature', 'temp_max', { unit: '°C' }),
    channel('low', 'temperature', 'temp_min', { unit: '°C' }),
  ];
  const log = read(open(name), declare(channels), name).log!;

  it('has a row for each of the 1461 days, one of them a leap day', () => {
    expect(log.rows).toBe(1461);
    expect(log.time).toMatchObject({ step: 86400, gaps: [] });
    expect(log.time.seconds.at(-1)).toBe(1460 * 86400);
  });

  it('has the extremes and means of the file', () => {
    for (const [at, title] of ['temp_max', 'temp_min'].entries()) {
      const independent = column(name, title);
      const values = [...log.channels[at]!.values];
      expect(Math.max(...values)).toBe(Math.max(...independent));
      expect(Math.min(...values)).toBe(Math.min(...independent));
      expect(mean(values)).toBe(mean(independent));
    }
    expect(Math.max(...log.channels[0]!.values)).toBe(35.6);
    expect(Math.min(...log.channels[1]!.values)).toBe(-7.1);
  });
});

describe('real: carbon dioxide at Mauna Loa (Scripps CO2 Program, CC BY 4.0)', () => {
  const name = 'co2-concentration.csv';
  const log = read(open(name), declare([channel('co2', 'other', 'CO2', { unit: 'ppm' })]), name).log!;

  it('begins in March 1958 and leaves out the months without data', () => {
    const months = column(name, 'CO2').length;
    expect(log.rows).toBe(months);
    expect(log.channels[0]!.values[0]).toBe(0.0003157);
    // 24:00 on the 15th of each month; the year 1958 to 2020 has steps of 28 to 31 days, more where months are missing.
    const steps = Array.from(log.time.seconds.subarray(1), (second, k) => (second - log.time.seconds[k]!) / 86400);
    expect(Math.min(...steps)).toBe(28);
    expect(steps.filter((days) => days > 31).length).toBeGreaterThan(0);
  });
});

describe('real: files that are no log of a bench, or not as they stand', () => {
  it('reads events with slashes and gaps (events of a code host, January to May 2015)', () => {
    const independent = column('github.csv', 'count');
    const { log, problems } = read(open('github.csv'), declare([channel('events', 'other', 'count', { unit: '1' })]), 'github.csv');
    expect(log!.rows + log!.setAside.length).toBe(independent.length);
    const stamps = open('github.csv')
      .toString('utf8')
      .match(/\d{4}.{15}(?=,)/g)!
      .map((stamp) => Date.parse(`${stamp.replaceAll('/', '-').replace(' ', 'T')}Z`) / 1000);
    const steps = stamps
      .slice(1)
      .map((stamp, k) => stamp - stamps[k]!)
      .sort((a, b) => a - b);
    expect(log!.time).toMatchObject({ format: 'iso8601', column: 'time', step: steps[steps.length >> 1] });
    expect([...log!.time.seconds]).toEqual(stamps.map((stamp) => stamp - stamps[0]!));
    expect(problems.every(({ severity }) => severity === 'warning')).toBe(true);
  });

  it('sets a second place after the first aside, by its clock (daily weather of two cities)', () => {
    const rows = column('weather.csv', 'temp_max').length;
    const { log, problems } = read(
      open('weather.csv'),
      declare([channel('high', 'temperature', 'temp_max', { unit: '°C' })]),
      'weather.csv',
    );
    expect(log!.rows + log!.setAside.length).toBe(rows);
    expect(problems.map(({ rule }) => rule)).toContain('time-backward');
  });

  it.each([
    ['unemployment.tsv', 'rate', 'time-column-missing'],
    ['global-temp.csv', 'temp', 'time-column-missing'],
    ['stocks.csv', 'price', 'time-column-missing'],
  ])('says that %s has no time that can be read', (name, title, rule) => {
    expect(read(open(name), declare([channel('x', 'other', title, { unit: '1' })]), name)).toMatchObject({
      log: null,
      problems: expect.arrayContaining([expect.objectContaining({ rule, severity: 'error' })]),
    });
  });
});
