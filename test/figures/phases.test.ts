import { describe, expect, test } from 'vitest';
import { derive } from '../../src/figures/derive.ts';
import { declaredPhases, detectLoadEdge, detectPhases, firstRowAfter, firstRowAt } from '../../src/figures/phases.ts';
import { interval95 } from '../../src/quantities/uncertainty.ts';
import { contextOf, every, logOf, noise, phase, presentAt, stepAt } from './build.ts';

/** The edges, where they are told. */
function edgesIn(of: Parameters<typeof detectLoadEdge>[0]) {
  const edges = detectLoadEdge(of);
  if (edges === null || typeof edges === 'string') throw new Error(edges ?? 'no load');
  return edges;
}

const log = logOf(every(10, 100), {});

describe('declared phases', () => {
  test('are half open, the one that ends last is closed', () => {
    const phases = declaredPhases(log, [phase('idle', 0, 50), phase('load', 50, 100)]);
    expect(phases.map(({ fromRow, toRow }) => [fromRow, toRow])).toEqual([
      [0, 5],
      [5, 11],
    ]);
  });

  test('the row at the end of the last one is the first of what follows it, where rows follow', () => {
    const [load] = declaredPhases(log, [phase('load', 50, 80)]);
    expect([load!.fromRow, load!.toRow]).toEqual([5, 8]);
    const soak = logOf(every(2, 2700), {
      cpu: { quantity: 'clock', values: (t: number) => (t >= 300 && t < 2400 ? 2.4e9 : 6e8) },
    });
    const { figures } = derive(soak, contextOf({ phases: [phase('load', 300, 2400)] }));
    expect(presentAt(figures, 'lowest_clock').quantity.value).toBe(2.4e9);
  });

  test('the one that ends last is closed wherever it is written; of two that end together, the one that begins later', () => {
    const rows = (...declared: ReturnType<typeof phase>[]) =>
      declaredPhases(log, declared).map(({ fromRow, toRow }) => [fromRow, toRow]);
    const [idle, load, tail] = [phase('idle', 0, 50), phase('load', 50, 100), phase('tail', 80, 100)];
    expect(rows(load, idle)).toEqual([
      [5, 11],
      [0, 5],
    ]);
    for (const [first, second] of [
      [load, tail],
      [tail, load],
    ] as const) {
      const closed = rows(first, second).map(([, toRow]) => toRow);
      expect(closed).toEqual(first === load ? [10, 11] : [11, 10]);
    }
  });

  test('run to the end of the log where no end is stated', () => {
    expect(declaredPhases(log, [phase('load', 50, Number.POSITIVE_INFINITY)])).toEqual([
      { name: 'load', from: 50, to: 100, fromRow: 5, toRow: 11, inferred: false },
    ]);
  });

  test('may leave gaps, and begin between rows', () => {
    const phases = declaredPhases(log, [phase('idle', 5, 25), phase('load', 71, 95)]);
    expect(phases.map(({ fromRow, toRow }) => [fromRow, toRow])).toEqual([
      [1, 3],
      [8, 10],
    ]);
  });

  test('last as long as there are rows where they end more than a step after the last', () => {
    expect(declaredPhases(log, [phase('idle', 0, 50), phase('load', 50, 3650)])[1]).toMatchObject({ from: 50, to: 100, toRow: 11 });
    expect(declaredPhases(log, [phase('load', 50, 110)])[0]).toMatchObject({ from: 50, to: 110, toRow: 11 });
  });

  test('outside the log have no rows', () => {
    const [late] = declaredPhases(log, [phase('load', 200, 300)]);
    expect(late).toMatchObject({ from: 200, to: 300, fromRow: 11, toRow: 11 });
  });

  test('of a log without rows have none', () => {
    expect(declaredPhases(logOf([], {}), [phase('load', 0, Number.POSITIVE_INFINITY)])).toMatchObject([{ fromRow: 0, toRow: 0 }]);
  });
});

test('binary search finds first rows at and after a time, repeated instants included', () => {
  const seconds = Float64Array.of(0, 1, 1, 1, 2);
  expect([0, 0.5, 1, 2, 3].map((time) => firstRowAt(seconds, time))).toEqual([0, 1, 1, 4, 5]);
  expect([-1, 0, 1, 2].map((time) => firstRowAfter(seconds, time))).toEqual([0, 1, 4, 5]);
});

describe('the load edge', () => {
  const random = noise(11);
  const block = (low: number, high: number, size: number) => (t: number) => (t >= 300 && t < 3900 ? high : low) + size * random();

  test('is found on power, to the row, with idle, load and cool-down', () => {
    const { phases, inferences } = detectPhases(logOf(every(1, 4500), { meter: { quantity: 'power', values: block(3, 10, 2) } }));
    expect(phases.map(({ name, from, to, inferred }) => [name, from, to, inferred])).toEqual([
      ['idle', 0, 300, true],
      ['load', 300, 3900, true],
      ['cool-down', 3900, 4500, true],
    ]);
    expect(inferences).toEqual([
      {
        method: 'load-edge',
        statement:
          "Phases were inferred: load from 5 min to 65 min, by Page's cumulative sum about the middle of two levels (E. S. Page, Biometrika 41, 1954, 100–115) on the channel meter.",
      },
    ]);
  });

  test('is looked for on power, then utilisation, clock, current, temperature', () => {
    const channels = {
      soc: { quantity: 'temperature', values: (t: number) => (t < 300 ? 22 : stepAt(t - 300)) },
      shunt: { quantity: 'current', values: block(0.6, 2, 0.1) },
      core: { quantity: 'clock', values: block(6e8, 2.6e9, 0) },
      busy: { quantity: 'utilisation', values: block(0.02, 0.98, 0.01) },
      meter: { quantity: 'power', values: block(3, 10, 1) },
    } as const;
    const names = Object.keys(channels) as (keyof typeof channels)[];
    const chosen = names.map((_, count) => {
      const some = Object.fromEntries(names.slice(0, names.length - count).map((name) => [name, channels[name]]));
      return edgesIn(logOf(every(1, 3600), some)).channel;
    });
    expect(chosen).toEqual(['meter', 'busy', 'core', 'shunt', 'soc']);
  });

  test('on a temperature alone is where it starts to climb, not half way up', () => {
    const course = (t: number) =>
      t < 600 ? 22 : t < 4200 ? stepAt(t - 600) : 22 + (stepAt(3600) - 22) * Math.exp(-(t - 4200) / 600);
    for (const size of [0, 0.5]) {
      const edges = edgesIn(
        logOf(every(2, 6000), { soc: { quantity: 'temperature', values: (t) => course(t) + size * random() } }),
      );
      expect(Math.abs(edges.loads[0]!.startRow * 2 - 600)).toBeLessThanOrEqual(10);
      expect(Math.abs(edges.loads[0]!.endRow * 2 - 4200)).toBeLessThanOrEqual(10);
      expect(edges.loads).toHaveLength(1);
      expect(edges.method).toContain('Hinkley');
    }
  });

  test('in a gap of the log is not told: no phase, the reason, and an energy that has room for it', () => {
    const t = Float64Array.from([...every(1, 3000)].filter((s) => s < 226 || s > 526));
    const torn = logOf(t, { meter: { quantity: 'power', values: (s) => (s >= 300 ? 8 : 1) } });
    expect(detectPhases(torn).phases).toEqual([]);
    expect(detectLoadEdge(torn)).toMatch(/^A load begins in a gap of the log, between 3\.75 min and 8\.78 min/);
    const { figures } = derive(torn, contextOf({ phases: 'auto' }));
    const why =
      'A load begins in a gap of the log, between 3.75 min and 8.78 min after its first row, by the channel meter. Declare the phases, if you know when it did.';
    expect(figures.get('phase_duration')).toMatchObject({ absent: 'no-phase', why });
    const energy = presentAt(figures, 'energy');
    const [low, high] = interval95(energy.quantity)!;
    expect(low).toBeLessThan(300 + 8 * 2700);
    expect(high).toBeGreaterThan(300 + 8 * 2700);
  });

  test('behind a step that the log comes in at rest, or in another log of the run, lies in no gap', () => {
    const slow = Float64Array.from([...every(30, 300), ...[...every(1, 900)].slice(301)]);
    const meter = { meter: { quantity: 'power', values: (s: number) => (s >= 300 ? 8 : 1) } } as const;
    expect(detectPhases(logOf(slow, meter)).phases.map(({ name }) => name)).toEqual(['idle', 'load']);
  });

  test('of a log under load from its first row leaves no idle phase', () => {
    const values = (t: number) => (t < 3000 ? 10 : 3) + random();
    expect(detectPhases(logOf(every(1, 3600), { meter: { quantity: 'power', values } })).phases.map(({ name }) => name)).toEqual([
      'load',
      'cool-down',
    ]);
  });

  test('passes over missing readings', () => {
    const values = (t: number) => (t % 7 === 0 ? Number.NaN : t < 300 ? 3 : 10);
    const edges = edgesIn(logOf(every(1, 3600), { meter: { quantity: 'power', values } }));
    expect(edges.loads).toEqual([{ startRow: 300, endRow: 3601 }]);
  });

  test.each([
    ['noise alone', (t: number) => 5 + random() + 0 * t],
    ['a constant', () => 5],
    ['no readings', () => Number.NaN],
  ])('is not found in %s', (_, values) => {
    const { phases, inferences } = detectPhases(logOf(every(1, 600), { meter: { quantity: 'power', values } }));
    expect(phases).toEqual([]);
    expect(inferences[0]!.statement).toBe('No channel of the log shows where a load begins.');
  });

  test('is not found where the temperature only drifts', () => {
    expect(
      detectLoadEdge(logOf(every(1, 3600), { soc: { quantity: 'temperature', values: (t) => 22 + t / 1000 + 0.3 * random() } })),
    ).toBeNull();
  });

  test('of an empty log, or one of a single row, is none', () => {
    expect(detectLoadEdge(logOf([], { meter: { quantity: 'power', values: [] } }))).toBeNull();
    expect(detectLoadEdge(logOf([0], { soc: { quantity: 'temperature', values: [20] } }))).toBeNull();
  });
});

describe('several loads', () => {
  const random = noise(5);
  /** W: loads from 300 to 900 s and from 1500 to 3000 s. */
  const twice = (t: number) => ((t >= 300 && t < 900) || (t >= 1500 && t < 3000) ? 10 : 2) + 0.4 * random();

  test('are phases of their own, with the pause between, and the sentence says how many there are', () => {
    const { phases, inferences } = detectPhases(logOf(every(1, 3600), { meter: { quantity: 'power', values: twice } }));
    expect(phases.map(({ name, from, to }) => [name, from, to])).toEqual([
      ['idle', 0, 300],
      ['load', 300, 900],
      ['pause', 900, 1500],
      ['load-2', 1500, 3000],
      ['cool-down', 3000, 3600],
    ]);
    expect(inferences[0]!.statement).toMatch(
      /^Phases were inferred: load from 5 min to 15 min and load-2 from 25 min to 50 min, by .+ on the channel meter\. There are 2 loads: figures of the load are those of the first\.$/,
    );
  });

  test('leave idle its own power', () => {
    const log = logOf(every(1, 3600), { meter: { quantity: 'power', values: twice } });
    const { figures } = derive(log, contextOf({ phases: 'auto' }));
    const idle = presentAt(figures, 'idle_power').quantity;
    expect(Math.abs(idle.value - 2)).toBeLessThan(0.05);
    expect(presentAt(figures, 'phase_duration').quantity.value).toBe(600);
    expect(presentAt(figures, 'phase_duration.load-2').quantity.value).toBe(1500);
    expect(Math.abs(presentAt(figures, 'energy.load-2').quantity.value - 15_000)).toBeLessThan(100);
  });

  test('of different power are all found', () => {
    const values = (t: number) => (t >= 300 && t < 900 ? 8 : t >= 1500 && t < 3000 ? 14 : 2) + 0.4 * random();
    const { phases } = detectPhases(logOf(every(1, 3600), { meter: { quantity: 'power', values } }));
    expect(phases.map(({ name }) => name)).toEqual(['idle', 'load', 'pause', 'load-2', 'cool-down']);
  });

  test('three of them, one of which begins the log, leave no idle', () => {
    const values = (t: number) => (t % 1200 < 600 ? 10 : 2);
    const { phases } = detectPhases(logOf(every(1, 3599), { meter: { quantity: 'power', values } }));
    expect(phases.map(({ name, from }) => [name, from])).toEqual([
      ['load', 0],
      ['pause', 600],
      ['load-2', 1200],
      ['pause-2', 1800],
      ['load-3', 2400],
      ['cool-down', 3000],
    ]);
  });

  test.each([
    ['rests of 20 s between tests', (t: number) => (t % 120 < 100 ? 10 : 2)],
    ['a governor that halves the power for 40 s in 80', (t: number) => (t % 80 < 40 ? 10 : 6)],
    ['a boost to three times the power for 30 s', (t: number) => (t < 330 ? 26 : 8)],
    ['one reading of a spike', (t: number) => (t === 1000 ? 60 : 10)],
  ])('are not made of one with %s', (_, loaded) => {
    const values = (t: number) => (t >= 300 && t < 3000 ? loaded(t) : 2) + 0.2 * random();
    const edges = edgesIn(logOf(every(1, 3600), { meter: { quantity: 'power', values } }));
    expect(edges.loads).toHaveLength(1);
    expect(edges.loads[0]!.startRow).toBe(300);
    expect(Math.abs(edges.loads[0]!.endRow - 3000)).toBeLessThanOrEqual(20);
  });

  test.each([1, 10, 30])('told from a temperature alone in steps of %d s hold the peak at their very end', (step) => {
    // A load from 5 to 15 min that is still climbing when it ends.
    const values = (t: number) =>
      t < 300 ? 25 : t <= 900 ? 25 + 40 * (1 - Math.exp(-(t - 300) / 400)) : 25 + 31 * Math.exp(-(t - 900) / 400);
    const climbing = logOf(every(step, 1800), { soc: { quantity: 'temperature', values } });
    const load = detectPhases(climbing).phases.find(({ name }) => name === 'load')!;
    const peak = Math.max(...climbing.channels[0]!.values);
    expect(Math.max(...climbing.channels[0]!.values.subarray(load.fromRow, load.toRow))).toBe(peak);
    expect(Math.abs(load.to - 900)).toBeLessThanOrEqual(2 * step + 20);
  });

  test('are told from a temperature alone by its bends', () => {
    const rise = (t: number, from: number, to: number) =>
      t < from ? 0 : 40 * (1 - Math.exp(-(Math.min(t, to) - from) / 300)) * (t > to ? Math.exp(-(t - to) / 300) : 1);
    const values = (t: number) => 22 + rise(t, 600, 2400) + rise(t, 4800, 6600) + 0.1 * random();
    const edges = edgesIn(logOf(every(2, 8400), { soc: { quantity: 'temperature', values } }));
    expect(edges.loads.map(({ startRow, endRow }) => [startRow, endRow].map((row) => Math.round((2 * row) / 30) * 30))).toEqual([
      [600, 2400],
      [4800, 6600],
    ]);
  });
});
