// The whole path on measurements that nobody here made: hourly normals of Seattle (NOAA NCDC, U.S. Climate Normals 1981–2010), as the
// npm package vega-datasets 3.2.1 carries them. What the page prints is compared with what splitting lines gives.
import { copyFileSync, mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { copyUnbuilt, type Ran, removeContents, type TestProject } from './project.ts';

const SOURCE = join(import.meta.dirname, '..', '..', 'node_modules', 'vega-datasets', 'data', 'seattle-weather-hourly-normals.csv');

/** Readings of the air's temperature by the hour of the year. */
const temperatures = readFileSync(SOURCE, 'utf8')
  .trimEnd()
  .split(/\r?\n/)
  .slice(1)
  .map((line) => Number.parseFloat(line.split(',')[2]!));

const FILES = {
  'devices/air.md': ['title: Air of a city', 'maker: Nobody'],
  'runs/normals.md': [
    'title: A normal year, by the hour',
    'device: air',
    'specimen: no-1',
    'date: 2010-01-01',
    'log: normals.csv',
    'channels:',
    '  air:',
    '    quantity: temperature',
    '    column: temperature',
    '    unit: °C',
    'phases:',
    '  idle: 0 .. 2160 h',
    '  load: 2160 h ..',
  ],
  'notes/year.md': ['title: A normal year', 'date: 2026-01-01', 'status: published', 'runs: normals'],
};

const TEXT = `The warmest hour of a normal year has :value[peak_temperature], the first ninety days have :value[idle_temperature] on average.

::plot{kind=trace channels=air id=year}
`;

let project: TestProject;
let built: Ran;

beforeAll(() => {
  project = copyUnbuilt('open-data');
  removeContents(project.root);
  for (const folder of ['content/devices', 'content/runs', 'content/notes', 'data'])
    mkdirSync(join(project.root, folder), { recursive: true });
  copyFileSync(SOURCE, join(project.root, 'data', 'normals.csv'));
  for (const [path, lines] of Object.entries(FILES)) project.write(`content/${path}`, `---\n${lines.join('\n')}\n---\n\n`);
  project.write('content/notes/year.md', `${project.read('content/notes/year.md')}${TEXT}`);
  built = project.run('build');
});
afterAll(() => project.remove());

describe('a site of open data', () => {
  it('is built from the untouched file', () => {
    expect(built.err).not.toContain(': error:');
    expect(built.code).toBe(0);
    expect(readFileSync(join(project.root, 'data', 'normals.csv')).equals(readFileSync(SOURCE))).toBe(true);
  });

  it('has the figures that the readings give', () => {
    const { log, figures } = JSON.parse(project.read('dist/runs/normals/figures.json')) as {
      log: { rows: number; span_s: number };
      figures: Record<string, { value: number }>;
    };
    expect(log.rows).toBe(temperatures.length);
    expect(log.span_s).toBe((temperatures.length - 1) * 3600);
    expect(figures.peak_temperature!.value).toBe(Math.max(...temperatures.slice(2160)));
    const first = temperatures.slice(0, 2160);
    const mean = first.reduce((sum, value) => sum + value, 0) / first.length;
    expect(Math.abs(figures.idle_temperature!.value - mean)).toBeLessThan(0.01);
  });

  it('prints the warmest hour in the sentence, and draws the year', () => {
    const html = project.read('dist/notes/year/index.html');
    const [peak] = [...html.matchAll(/<a class="held"[^>]*>([^<]*)<\/a>/g)].map((match) => match[1]);
    expect(peak).toBe(`${Math.max(...temperatures.slice(2160)).toFixed(1)}\u00a0°C`);
    expect(html).toContain('<svg');
    const drawn = project.read('dist/notes/year/plots/year.csv').trimEnd().split(/\r?\n/);
    expect(drawn.length).toBeGreaterThan(500);
  });
});
