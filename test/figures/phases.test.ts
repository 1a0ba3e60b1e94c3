import { describe, expect, test } from 'vitest';
import { declaredPhases, detectLoadEdge, detectPhases, firstRowAfter, firstRowAt } from '../../src/figures/phases.ts';
import { every, logOf, noise, phase, stepAt } from './build.ts';

const log = logOf(every(10, 100), {});

describe('declared phases', () => {
  test('are half open, the one that ends last is closed', () => {
    const phases = declaredPhases(log, [phase('idle', 0, 50), phase('load', 50, 100)]);
    expect(phases.map(({ fromRow, toRow }) => [fromRow, toRow])).toEqual([
      [0, 5],
      [5, 11],
    ]);
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
      return detectLoadEdge(logOf(every(1, 3600), some))!.channel;
    });
    expect(chosen).toEqual(['meter', 'busy', 'core', 'shunt', 'soc']);
  });

  test('on a temperature alone is where it starts to climb, not half way up', () => {
    const course = (t: number) =>
      t < 600 ? 22 : t < 4200 ? stepAt(t - 600) : 22 + (stepAt(3600) - 22) * Math.exp(-(t - 4200) / 600);
    for (const size of [0, 0.5]) {
      const edges = detectLoadEdge(
        logOf(every(2, 6000), { soc: { quantity: 'temperature', values: (t) => course(t) + size * random() } }),
      )!;
      expect(Math.abs(edges.startRow * 2 - 600)).toBeLessThanOrEqual(10);
      expect(Math.abs(edges.endRow * 2 - 4200)).toBeLessThanOrEqual(10);
      expect(edges.method).toContain('Hinkley');
    }
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
    const edges = detectLoadEdge(logOf(every(1, 3600), { meter: { quantity: 'power', values } }))!;
    expect([edges.startRow, edges.endRow]).toEqual([300, 3601]);
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
