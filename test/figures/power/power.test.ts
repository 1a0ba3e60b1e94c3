import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { subtract } from '../../../src/quantities/arithmetic.ts';
import type { Quantity } from '../../../src/quantities/quantity.ts';
import { standardUncertainty } from '../../../src/quantities/uncertainty.ts';
import { apart, contextOf, every, instrumentOf, logOf, noise, phase, presentAt } from '../build.ts';

const PHASES = [phase('idle', 0, 300), phase('load', 300, 3900)];
const volts = (value: number): Quantity => ({ value, unit: 'V', parts: [] });
const u = (quantity: Quantity) => standardUncertainty(quantity)!;
const stepped = (low: number, high: number) => (t: number) => (t < 300 ? low : high);

describe('power', () => {
  test('load less idle on one meter with 1 % gain error: 10 W − 3 W, u 0.07 W, the gain being shared (JCGM 100:2008, 5.2.2)', () => {
    const meter = instrumentOf('meter', 'power', { ofReading: 0.01, coverage: 'standard' });
    const log = logOf(every(1, 3900), { board: { quantity: 'power', values: stepped(3, 10), instrument: 'meter' } });
    const { figures } = derive(log, contextOf({ phases: PHASES, instruments: { meter } }));
    const [idle, load] = [presentAt(figures, 'idle_power').quantity, presentAt(figures, 'load_power').quantity];
    expect([idle.value, load.value]).toEqual([3, 10]);
    expect(apart(u(subtract(load, idle) as Quantity), 0.07)).toBeLessThan(1e-9);
  });

  test('current × voltage, both ± 1 %: 1.414 % (root sum of squares; JCGM 100:2008, 5.1.6)', () => {
    const both = { ofReading: 0.01, coverage: 'standard' } as const;
    const instruments = {
      ammeter: instrumentOf('ammeter', 'current', both),
      voltmeter: instrumentOf('voltmeter', 'voltage', both),
    };
    const log = logOf(every(1, 3900), {
      amps: { quantity: 'current', values: stepped(0.6, 2), at: 'board input', instrument: 'ammeter' },
      volts: { quantity: 'voltage', values: () => 5, at: 'board input', instrument: 'voltmeter' },
    });
    const load = presentAt(derive(log, contextOf({ phases: PHASES, instruments })).figures, 'load_power');
    expect(load.quantity.value).toBe(10);
    expect(apart(u(load.quantity) / 10, Math.SQRT2 / 100)).toBeLessThan(1e-9);
    expect(load.of).toMatchObject({ channel: 'amps', at: 'board input', power: 'current × voltage', phase: 'load' });
    expect(load.from.columns).toEqual(['time', 'AMPS', 'VOLTS']);
  });

  test('offsets of both go through the other reading', () => {
    const standard = (absolute: number) => ({ absolute, coverage: 'standard' }) as const;
    const instruments = {
      ammeter: instrumentOf('ammeter', 'current', standard(0.01)),
      voltmeter: instrumentOf('voltmeter', 'voltage', standard(0.05)),
    };
    const log = logOf(every(1, 600), {
      amps: { quantity: 'current', values: () => 2, at: 'rail', instrument: 'ammeter' },
      volts: { quantity: 'voltage', values: () => 5, at: 'rail', instrument: 'voltmeter' },
    });
    const { quantity } = presentAt(derive(log, contextOf({ instruments })).figures, 'load_power');
    expect(apart(u(quantity), Math.hypot(5 * 0.01, 2 * 0.05))).toBeLessThan(1e-9);
  });

  test('row by row, not mean by mean: current and voltage that move against each other', () => {
    const log = logOf([0, 1, 2, 3, 4], {
      amps: { quantity: 'current', values: [1, 3, 1, 3, 1], at: 'rail' },
      volts: { quantity: 'voltage', values: [6, 4, 6, 4, 6], at: 'rail' },
    });
    // ½·6 + 12 + 6 + 12 + ½·6 over 4 s
    expect(presentAt(derive(log, contextOf()).figures, 'load_power').quantity.value).toBe(9);
  });

  test('a power channel is preferred to current × voltage at its place; another place is kept beside it', () => {
    const log = logOf(every(1, 600), {
      amps: { quantity: 'current', values: () => 2, at: 'board input' },
      volts: { quantity: 'voltage', values: () => 5, at: 'board input' },
      board: { quantity: 'power', values: () => 9.9, at: 'board input' },
      rail: { quantity: 'current', values: () => 1, at: 'rail' },
      core: { quantity: 'voltage', values: () => 0.8, at: 'rail' },
      wall: { quantity: 'power', values: () => 13, at: 'wall' },
    });
    const { figures } = derive(log, contextOf());
    const powers = [...figures]
      .filter(([address]) => address.startsWith('load_power'))
      .map(([address]) => [address, presentAt(figures, address).quantity.value]);
    expect(powers).toEqual([
      ['load_power', 9.9],
      ['load_power.wall', 13],
      ['load_power.rail', 0.8],
    ]);
  });

  test('the stated supply stands in for a voltage at the same place, with its uncertainty', () => {
    const supply: Quantity = {
      value: 5,
      unit: 'V',
      parts: [{ source: { id: 'run:soak/supply', title: 'supply', dof: null }, share: 0.1 }],
    };
    const log = logOf(every(1, 600), { amps: { quantity: 'current', values: () => 2, at: 'board input' } });
    const { figures } = derive(log, contextOf({ supply: { voltage: supply, at: 'board input' } }));
    const load = presentAt(figures, 'load_power');
    expect(load.quantity.value).toBe(10);
    expect(apart(u(load.quantity), 0.2)).toBeLessThan(1e-9);
    expect(load.of).toMatchObject({ power: 'current × stated supply' });
  });

  const amps = { amps: { quantity: 'current', values: () => 2, at: 'board input' } } as const;
  test.each([
    ['no voltage, none stated', amps, {}, 'no-condition', /no voltage is assumed/],
    ['a supply at another place', amps, { supply: { voltage: volts(5), at: 'adapter output' } }, 'different-places', /same place/],
    ['a supply at no stated place', amps, { supply: { voltage: volts(5) } }, 'different-places', /same place/],
    [
      'a voltage at another place',
      { ...amps, volts: { quantity: 'voltage', values: () => 5, at: 'rail' } },
      {},
      'different-places',
      /same place/,
    ],
    [
      'a supply that is not in volts',
      amps,
      { supply: { voltage: { value: 5, unit: 'A', parts: [] }, at: 'board input' } },
      'no-condition',
      /not in volts/,
    ],
    [
      'alternating current at the wall',
      { amps: { quantity: 'current', values: () => 2, at: 'wall' } },
      { supply: { voltage: volts(230), at: 'wall' } },
      'no-channel',
      /not volts times amperes/,
    ],
    ['neither power nor current', {}, {}, 'no-channel', /neither a power nor a current/],
  ] as const)('is absent with %s', (_, channels, context, code, why) => {
    const { figures } = derive(logOf(every(1, 600), channels), contextOf(context));
    for (const name of ['load_power', 'peak_power', 'energy']) {
      expect(figures.get(name)).toMatchObject({ absent: code });
      expect((figures.get(name) as { why: string }).why).toMatch(why);
    }
  });

  test('where neither place is stated, that they are the same is printed as an inference', () => {
    const log = logOf(every(1, 600), {
      amps: { quantity: 'current', values: () => 2 },
      volts: { quantity: 'voltage', values: () => 5 },
    });
    expect(presentAt(derive(log, contextOf()).figures, 'load_power').inferred).toEqual([
      'The place of measurement is stated neither for the current nor for the voltage; they are taken to be at the same one.',
    ]);
  });

  test('currents are means of their phase; peak power states its averaging', () => {
    const log = logOf(every(1, 3900), {
      amps: { quantity: 'current', values: stepped(0.6, 2) },
      board: { quantity: 'power', values: (t) => (t === 1000 ? 14 : 10) },
    });
    const { figures } = derive(log, contextOf({ phases: PHASES }));
    expect(apart(presentAt(figures, 'idle_current').quantity.value, 0.6)).toBeLessThan(1e-12);
    expect(apart(presentAt(figures, 'load_current').quantity.value, 2)).toBeLessThan(1e-12);
    expect(presentAt(figures, 'peak_power')).toMatchObject({
      quantity: { value: 14, unit: 'W' },
      of: { averaging: "none beyond the instrument's own; one reading in 1 s" },
    });
  });
});

describe('energy', () => {
  const energyOf = (seconds: ArrayLike<number>, watts: ArrayLike<number>) =>
    presentAt(derive(logOf(seconds, { board: { quantity: 'power', values: watts } }), contextOf()).figures, 'energy');

  test('trapezoidal rule on uneven steps: t 0 1 2 4 7 s, P 2 4 4 6 3 W give 30.5 J (by hand)', () => {
    expect(energyOf([0, 1, 2, 4, 7], [2, 4, 4, 6, 3]).quantity).toMatchObject({ value: 30.5, unit: 'J' });
  });

  test.each([
    [2, 1.570796327],
    [4, 1.896118898],
    [8, 1.974231602],
    [16, 1.993570344],
  ])(
    'of a sine over half a period in %i panels: %d (Burden & Faires, Numerical Analysis, first column of a Romberg table; from memory)',
    (panels, expected) => {
      const t = Array.from({ length: panels + 1 }, (_, i) => (i * Math.PI) / panels);
      expect(apart(energyOf(t, t.map(Math.sin)).quantity.value, expected)).toBeLessThan(1e-9);
    },
  );

  test('5 W for 24 h are 0.12 kWh', () => {
    const t = every(60, 86_400);
    expect(
      apart(
        energyOf(
          t,
          t.map(() => 5),
        ).quantity.value,
        0.12 * 3.6e6,
      ),
    ).toBeLessThan(1e-12);
  });

  test('phases are integrated to their edges', () => {
    const log = logOf(every(10, 3900), { board: { quantity: 'power', values: stepped(3, 10) } });
    const { figures } = derive(log, contextOf({ phases: PHASES }));
    expect(apart(presentAt(figures, 'energy.idle').quantity.value, 900)).toBeLessThan(1e-12);
    expect(apart(presentAt(figures, 'energy.load').quantity.value, 36_000)).toBeLessThan(1e-12);
    expect(presentAt(figures, 'energy').of).toMatchObject({ over: 'the whole log' });
  });

  test('what a phase claims beyond the log is not made up', () => {
    const log = logOf(every(1, 600), { board: { quantity: 'power', values: () => 10 } });
    const { figures } = derive(log, contextOf({ phases: [phase('load', 0, 3600)] }));
    expect(presentAt(figures, 'energy.load').quantity.value).toBe(6000);
  });

  test('a gap is left out and named', () => {
    const t = [...every(1, 100), ...every(1, 100).map((s) => s + 1000)];
    const energy = energyOf(
      t,
      t.map(() => 10),
    );
    expect(energy.quantity.value).toBe(2000);
    expect(energy.of).toMatchObject({ gaps: '1 gap, 15 min left out', observed: '3.33 min' });
  });

  test('independent scatter of readings averages out; a gain does not', () => {
    const random = noise(4);
    const meter = instrumentOf('meter', 'power', { ofReading: 0.01, coverage: 'standard' });
    const log = logOf(every(1, 3600), { board: { quantity: 'power', values: () => 10 + random(), instrument: 'meter' } });
    const { quantity } = presentAt(derive(log, contextOf({ instruments: { meter } })).figures, 'energy');
    const share = (kind: string) => Math.abs(quantity.parts!.find((part) => part.source.id.endsWith(kind))!.share);
    expect(apart(share('gain'), 0.01 * quantity.value)).toBeLessThan(1e-9);
    expect(apart(share('sampling'), Math.sqrt(1 / 12) * Math.sqrt(3600))).toBeLessThan(0.05);
  });

  describe('by a running counter', () => {
    const counter = (values: ArrayLike<number> | ((t: number) => number), more = {}) =>
      ({ total: { quantity: 'energy', values, ...more } }) as const;

    test('is last less first, preferred to the integral, which stands beside it', () => {
      const log = logOf(every(1, 600), { ...counter((t) => 1000 + 10.1 * t), board: { quantity: 'power', values: () => 10 } });
      const energy = presentAt(derive(log, contextOf()).figures, 'energy');
      expect(apart(energy.quantity.value, 6060)).toBeLessThan(1e-12);
      expect(energy.of).toMatchObject({ method: 'running counter, last less first', integral_of_power_j: 6000 });
    });

    test('counts through gaps, and to the edges of phases', () => {
      const t = [...every(10, 3900)].filter((s) => s < 1000 || s > 2000);
      const log = logOf(
        t,
        counter((s) => (s < 295 ? 3 * s : 885 + 10 * (s - 295))),
      );
      const { figures } = derive(log, contextOf({ phases: [phase('idle', 0, 295), phase('load', 295, 3900)] }));
      expect(
        apart(presentAt(figures, 'energy.load').quantity.value + presentAt(figures, 'energy.idle').quantity.value, 885 + 36_050),
      ).toBeLessThan(1e-12);
      expect(presentAt(figures, 'energy.load').of).toMatchObject({ gaps: '1 gap, counted through' });
    });

    test('that was reset: the step across it is left out, and said', () => {
      const energy = presentAt(derive(logOf([0, 1, 2, 3, 4], counter([100, 110, 120, 5, 15])), contextOf()).figures, 'energy');
      expect(energy.quantity.value).toBe(30);
      expect(energy.inferred).toEqual(['The counter total fell 1 time: taken as a reset, the step across it is left out.']);
    });

    test('offset cancels, the steps at both ends stay', () => {
      const instruments = { meter: instrumentOf('meter', 'energy', { absolute: 50 }) };
      const log = logOf(
        every(1, 600),
        counter((t) => 10 * t, { step: 3, instrument: 'meter' }),
      );
      expect(
        apart(u(presentAt(derive(log, contextOf({ instruments })).figures, 'energy').quantity), 3 / Math.sqrt(6)),
      ).toBeLessThan(1e-9);
    });

    test('without readings gives way to the integral', () => {
      const log = logOf(every(1, 600), { ...counter(() => Number.NaN), board: { quantity: 'power', values: () => 10 } });
      expect(presentAt(derive(log, contextOf()).figures, 'energy').quantity.value).toBe(6000);
    });
  });
});
