import { describe, expect, test } from 'vitest';
import { CATALOGUE, type FigureName } from '../../src/figures/catalogue.ts';
import { derive } from '../../src/figures/derive.ts';
import { ABSENT_CODES, type Figure, type FigureMap, isPresent, type RunFigures } from '../../src/figures/figure.ts';
import type { Quantity } from '../../src/quantities/quantity.ts';
import { contextOf, every, logOf, noise, phase, stepAt } from './build.ts';

const celsius = (value: number): Quantity => ({ value, unit: '°C', parts: [] });
const BARE = CATALOGUE.filter(({ subject }) => ['thermal', 'clock', 'power'].includes(subject)).map(({ name }) => name);

/** A log in which every figure of the catalogue can be had. */
function full(): RunFigures {
  const random = noise(9);
  const [load, end] = [600, 5400];
  const loaded = (t: number) => t >= load && t < end;
  const hottest = stepAt(end - load);
  const course = (t: number) => (t < load ? 22 : t < end ? stepAt(t - load) : 22 + (hottest - 22) * Math.exp((end - t) / 600));
  const log = logOf(every(1, 8400), {
    soc: { quantity: 'temperature', values: (t) => course(t) + 0.2 * random(), step: 0.1 },
    room: { quantity: 'ambient', values: () => 22 + 0.1 * random() },
    core: { quantity: 'clock', values: (t) => (!loaded(t) ? 0.6e9 : t > 3000 && t < 3010 ? 2e9 : 2.6e9), shows: 'delivered' },
    amps: { quantity: 'current', values: (t) => (loaded(t) ? 2 : 0.6) + 0.01 * random(), at: 'board input' },
    board: { quantity: 'power', values: (t) => (loaded(t) ? 10 : 3) + 0.1 * random(), at: 'board input' },
    wall: { quantity: 'power', values: (t) => (loaded(t) ? 12 : 4) + 0.1 * random(), at: 'wall' },
    cell: { quantity: 'power', values: (t) => (loaded(t) ? 11 : 3) + 0.1 * random(), at: 'battery' },
    charge: { quantity: 'charge_level', values: (t) => Math.round(100 * (1 - t / 20_000)) / 100, step: 0.01 },
  });
  const context = contextOf({
    phases: [phase('idle', 0, load), phase('load', load, end), phase('cool-down', end, Number.POSITIVE_INFINITY)],
    setting: { clock: { value: 2.6e9, unit: 'Hz', parts: [] } },
    device: { id: 'larch', throttleAt: { soc: celsius(65) } },
  });
  return derive(log, context);
}

/** The first figure of that name: that of a share or a spot stands under an address of its own. */
function named(figures: FigureMap, name: FigureName): Figure | undefined {
  return figures.get(name) ?? [...figures.values()].find((figure) => figure.name === name);
}

/** Runs in which everything is absent for one reason or another. */
const BARREN: readonly (readonly [string, RunFigures])[] = [
  ['no channels', derive(logOf(every(1, 60), {}), contextOf())],
  [
    'no rows',
    derive(
      logOf([], {
        soc: { quantity: 'temperature', values: [] },
        core: { quantity: 'clock', values: [] },
        board: { quantity: 'power', values: [] },
      }),
      contextOf(),
    ),
  ],
  [
    'one row',
    derive(
      logOf([0], {
        soc: { quantity: 'temperature', values: [20] },
        core: { quantity: 'clock', values: [1e9] },
        board: { quantity: 'power', values: [3] },
      }),
      contextOf({ phases: 'auto' }),
    ),
  ],
  [
    'no phases',
    derive(
      logOf(every(1, 60), {
        soc: { quantity: 'temperature', values: () => 20 },
        core: { quantity: 'clock', values: () => 1e9 },
        amps: { quantity: 'current', values: () => 1 },
      }),
      contextOf({ phases: [] }),
    ),
  ],
  [
    'no readings',
    derive(
      logOf(every(1, 3600), {
        soc: { quantity: 'temperature', values: () => Number.NaN },
        room: { quantity: 'ambient', values: () => Number.NaN },
        core: { quantity: 'clock', values: () => Number.NaN },
        amps: { quantity: 'current', values: () => Number.NaN },
        board: { quantity: 'power', values: () => Number.NaN },
        total: { quantity: 'energy', values: () => Number.NaN },
        flags: { quantity: 'throttle_flag', values: () => Number.NaN },
      }),
      contextOf({
        phases: [phase('idle', 0, 600), phase('load', 600, 3600)],
        device: { id: 'larch', throttleAt: { soc: celsius(85) } },
        setting: { clock: { value: 1e9, unit: 'Hz', parts: [] } },
      }),
    ),
  ],
];

describe('derive', () => {
  test('gives every figure of the catalogue from a log that has it all', () => {
    const { figures } = full();
    const absent = BARE.filter((name) => !isPresent(named(figures, name)!));
    // Its temperature is one exponential.
    expect(absent).toEqual(BARE.filter((name) => name.startsWith('second_')));
  });

  test('units are those of the catalogue, numbers are finite, parts are sorted and single', () => {
    for (const [address, figure] of full().figures) {
      if (!isPresent(figure)) continue;
      const { quantity, interval } = figure;
      expect([address, quantity.unit]).toEqual([address, CATALOGUE.find(({ name }) => name === figure.name)!.unit]);
      const ids = quantity.parts!.map((part) => part.source.id);
      expect(ids).toEqual([...new Set(ids)].sort());
      for (const number of [quantity.value, ...quantity.parts!.map((part) => part.share), ...(interval ?? [])])
        expect(Number.isFinite(number)).toBe(true);
      if (interval) expect(interval[0] <= quantity.value && quantity.value <= interval[1]).toBe(true);
      expect(figure.from.columns[0]).toBe('time');
    }
  });

  test.each(BARREN)('with %s every figure is there, absent, with a code and a whole sentence', (_, { figures }) => {
    for (const name of BARE) {
      const figure = named(figures, name);
      expect([name, figure !== undefined]).toEqual([name, true]);
      if (isPresent(figure!)) {
        expect([name, figure.quantity.value]).toEqual([name, expect.any(Number)]);
        expect(['energy', 'sensor_noise']).toContain(name);
        continue;
      }
      expect(ABSENT_CODES).toContain(figure!.absent);
      expect(figure!.why).toMatch(/^[A-Z].*\.$/);
    }
  });

  test('what rests on inferred phases says so, and a log without a load edge has none', () => {
    const log = logOf(every(1, 1200), {
      board: { quantity: 'power', values: (t) => (t < 300 ? 3 : 10) },
      soc: { quantity: 'temperature', values: () => 40 },
    });
    const { figures, inferences, phases } = derive(log, contextOf({ phases: 'auto' }));
    expect(phases.map(({ name }) => name)).toEqual(['idle', 'load']);
    for (const name of ['idle_power', 'load_power', 'peak_temperature'])
      expect(figures.get(name)).toMatchObject({ inferred: [inferences[0]!.statement] });
    const flat = derive(logOf(every(1, 1200), { board: { quantity: 'power', values: () => 3 } }), contextOf({ phases: 'auto' }));
    expect(flat.figures.get('load_power')).toMatchObject({
      absent: 'no-phase',
      why: 'The run has no load phase: none was found in the log.',
    });
    expect(flat.inferences).toHaveLength(1);
  });

  test("the author's own phases get a mean clock and an energy", () => {
    const log = logOf(every(1, 300), {
      core: { quantity: 'clock', values: () => 1e9 },
      board: { quantity: 'power', values: () => 3 },
    });
    const { figures } = derive(log, contextOf({ phases: [phase('load', 0, 200), phase('cool-down', 200, 300)] }));
    expect([...figures.keys()]).toEqual(expect.arrayContaining(['mean_clock.cool-down', 'energy.load', 'energy.cool-down']));
  });

  test('readings that overflow on the way are absent, not infinite', () => {
    const { figures } = derive(
      logOf(every(1, 60), { board: { quantity: 'power', values: (t) => (t % 2 === 0 ? 1e200 : -1e200) } }),
      contextOf(),
    );
    expect(figures.get('load_power')).toMatchObject({ absent: 'out-of-range' });
  });

  test('is the same for the same input, and leaves the log as it was', () => {
    const values = every(1, 4000).map(stepAt);
    const log = logOf(every(1, 4000), { soc: { quantity: 'temperature', values } });
    const before = log.channels[0]!.values.slice();
    const once = JSON.stringify([...derive(log, contextOf({ phases: 'auto' })).figures]);
    expect(JSON.stringify([...derive(log, contextOf({ phases: 'auto' })).figures])).toBe(once);
    expect(log.channels[0]!.values).toEqual(before);
  });
});
