/** Every figure of the catalogue has a state in which it is absent, with a code and a sentence, and is published so. */
import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/figures/catalogue.ts';
import { derive } from '../../src/figures/derive.ts';
import { ABSENT_CODES, type AbsentFigure, type Figure, isPresent } from '../../src/figures/figure.ts';
import { figuresJson } from '../../src/figures/figures-json.ts';
import { repeatFigures } from '../../src/figures/repeats/repeats.ts';
import type { ScoredTest } from '../../src/figures/scores/score-table.ts';
import { readAttempts } from '../../src/figures/stability/read-attempts.ts';
import { stabilityFigures } from '../../src/figures/stability/stability.ts';
import type { SurfaceReading } from '../../src/figures/surface/surface-table.ts';
import { contextOf, every, logOf, phase } from './build.ts';
import { compareRuns } from './comparison/runs.ts';

type Figures = ReadonlyMap<string, Figure>;

/** A run with a log of nothing, a test without a result, and a spot of bare metal. */
function bareRun(): Figures {
  const lost: ScoredTest = {
    id: 'mix',
    title: 'mix',
    unit: 'points',
    better: 'higher',
    repeats: [{ name: '1', value: Number.NaN, step: 0, window: null, line: 2 }],
  };
  const spot: SurfaceReading = {
    line: 2,
    spot: 'lid',
    title: 'lid',
    part: { id: 'lid', title: 'lid' },
    material: 'bare aluminium',
    contact: 'held',
    reading: { value: 50, u: null, step: 0.1 },
    emissivitySet: 0.95,
    emissivity: { value: 0.05, u: 0.01, step: 0.01 },
    reflected: { value: 22, u: 1, step: 1 },
    remedy: null,
  };
  const whole = { x: [0, 1], y: [0, 1] } as const;
  const region = { box: whole, values: Float64Array.of(50, 49), hottest: { x: 0.25, y: 0.5 }, standsOut: 0.5 };
  const scores = { file: 'data/scores.csv', tests: [lost] };
  const surface = {
    file: 'data/lid.csv',
    readings: [spot, { ...spot, spot: 'foot', title: 'foot', reflected: null }, { ...spot, spot: 'base', title: 'base', region }],
    columns: [],
    inferred: [],
  };
  return derive(logOf(every(1, 600), {}), contextOf(), { scores, surface }).figures;
}

/** A scored test whose windows the log covers, but with neither clock nor power in it. */
function windowsOnly(): Figures {
  const moment = (seconds: number) => ({ kind: 'elapsed', seconds }) as const;
  const window = { start: moment(10), end: moment(40) };
  const tests: ScoredTest[] = [
    { id: 'mix', title: 'mix', unit: 's', better: 'lower', repeats: [{ name: '1', value: 30, step: 1, window, line: 2 }] },
  ];
  return derive(logOf(every(1, 600), {}), contextOf(), { scores: { file: 'data/scores.csv', tests } }).figures;
}

/** A test of which less is better, with power in its windows: a time by the watt or by the joule says nothing. */
function poweredTime(): Figures {
  const moment = (seconds: number) => ({ kind: 'elapsed', seconds }) as const;
  const repeats = [10, 50].map((start, k) => {
    const window = { start: moment(start), end: moment(start + 30) };
    return { name: String(k + 1), value: 30 + k, step: 1, window, line: 2 + k };
  });
  const tests: ScoredTest[] = [{ id: 'mix', title: 'mix', unit: 's', better: 'lower', repeats }];
  const log = logOf(every(1, 600), { board: { quantity: 'power', values: () => 8, at: 'board input' } });
  return derive(log, contextOf(), { scores: { file: 'data/scores.csv', tests } }).figures;
}

/** A log of the length of a coffee break, of a device that neither settles nor throttles. */
function shortRun(): Figures {
  const log = logOf(every(1, 300), {
    soc: { quantity: 'temperature', values: (t) => 30 + t / 10 },
    core: { quantity: 'clock', values: () => 2e9 },
    flag: { quantity: 'throttle_flag', values: () => 0 },
  });
  return derive(log, contextOf({ phases: [phase('load', 0, 300)] })).figures;
}

function attempts(...rows: string[]): Figures {
  const csv = ['clock,voltage_offset,outcome,note', ...rows, ''].join('\n');
  const passing = { test: 'mix', duration: 3600, ambient: '22 °C' };
  return stabilityFigures([readAttempts(new TextEncoder().encode(csv), 'data/attempts.csv', 'no-1', passing).ladder]);
}

const RUN = { run: 'a', specimen: 'no-1', date: '2026-03-14', likeness: 'same', figures: new Map() };

const STATES: Readonly<Record<string, Figures>> = {
  'a log of nothing': bareRun(),
  'a run without phases': derive(logOf(every(1, 600), {}), contextOf({ phases: [] })).figures,
  'a fan and a microphone without a load': derive(
    logOf(every(1, 60), { fan: { quantity: 'fan', values: () => 1 }, mic: { quantity: 'sound_level', values: () => 40 } }),
    contextOf({ phases: [] }),
  ).figures,
  'windows without readings': windowsOnly(),
  'a time that less is better of': poweredTime(),
  'a short log': shortRun(),
  'no attempt passed': attempts('2.6 GHz,0 mV,no boot,'),
  'no attempt failed': attempts('2.0 GHz,0 mV,passed,'),
  'two runs that share nothing': compareRuns({ rated: { scores: { mix: null } }, fast: { scores: { mix: 5 } } }),
  'two settings run once each': compareRuns({
    rated: { scores: { mix: [5, 0.01, 9] }, clock: 2e9 },
    fast: { scores: { mix: [6, 0.01, 9] }, clock: 2.4e9 },
  }),
  'one run alone': repeatFigures('larch', [RUN]),
};

describe('absent states', () => {
  const absent = new Map<string, AbsentFigure>();
  for (const figures of Object.values(STATES))
    for (const figure of figures.values()) if (!isPresent(figure) && !absent.has(figure.name)) absent.set(figure.name, figure);

  test.each(CATALOGUE.map(({ name }) => name))('%s', (name) => {
    const figure = absent.get(name);
    expect(figure, `${name} is never absent here`).toBeDefined();
    expect(ABSENT_CODES).toContain(figure!.absent);
    expect(figure!.why).toMatch(/^\S.{10,}\.$/);
  });

  test.each(Object.entries(STATES))('%s is published with its reasons', (_, figures) => {
    const { figures: published } = figuresJson({}, figures) as { figures: Record<string, Record<string, unknown>> };
    expect(Object.keys(published).sort()).toEqual([...figures.keys()].sort());
    for (const [address, figure] of figures)
      if (!isPresent(figure)) expect(published[address]).toMatchObject({ absent: figure.absent, why: figure.why });
  });
});
