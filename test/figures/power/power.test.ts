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

  describe('across a gap', () => {
    const withGap = (from: number, to: number, power: (t: number) => number) => {
      const t = [...every(1, 3600)].filter((s) => s <= from || s >= to);
      return derive(logOf(t, { board: { quantity: 'power', values: power } }), contextOf()).figures;
    };

    test('is filled from the readings about it, as uncertain as that proves elsewhere', () => {
      const random = noise(5);
      const figures = withGap(1000, 1300, () => 10 + random());
      const [energy, power] = [presentAt(figures, 'energy.load'), presentAt(figures, 'load_power')];
      expect(apart(energy.quantity.value, 36_000)).toBeLessThan(1e-3);
      expect(energy.of).toMatchObject({ gaps: '1 gap, 5 min filled from the readings about', observed: '55 min' });
      expect(apart(energy.quantity.value / 3600, power.quantity.value)).toBeLessThan(1e-4);
      const gap = energy.quantity.parts!.find(({ source }) => source.id === 'run:soak/energy.load/gaps')!;
      // Two means of 120 readings, uniform in ± 0.5: 300 s × √(1/12 ÷ 240 + 1/12 ÷ 300), and 1/m of it for seven stretches.
      expect(gap.share).toBeGreaterThan(5);
      expect(gap.share).toBeLessThan(15);
      expect(gap.source.dof).toBe(7);
    });

    test('is no energy where the rest is too short to tell, but a bound', () => {
      const figures = withGap(1350, 2250, () => 8);
      expect(figures.get('energy.load')).toMatchObject({
        absent: 'not-observed',
        why: 'Of the load phase 15 min were not logged, and what was logged is too short to tell what may happen in such a time.',
        bound: { relation: '>', value: 21_600, unit: 'J' },
        of: { observed: '45 min' },
      });
      expect(figures.get('load_power')).toMatchObject({ absent: 'not-observed' });
    });

    test('a log that changes its step from 30 s to 1 s has no gap, and loses nothing', () => {
      const t = [...every(30, 1770), ...every(1, 1800).map((s) => s + 1800)];
      const energy = energyOf(
        t,
        t.map(() => 8),
      );
      expect(energy.quantity.value).toBe(28_800);
      expect(energy.of).not.toHaveProperty('gaps');
    });

    test('what a phase has of no reading at its end is a gap too', () => {
      const log = logOf(every(1, 3600), { board: { quantity: 'power', values: (s) => (s < 3000 ? 10 : Number.NaN) } });
      const { figures } = derive(log, contextOf());
      expect(presentAt(figures, 'energy.load').quantity.value).toBeCloseTo(36_000, 6);
      expect(presentAt(figures, 'energy.load').of).toMatchObject({ gaps: '1 gap, 10 min filled from the readings about' });
    });
  });

  test('the energy of a phase is its mean power times its length, with the same relative scatter', () => {
    const random = noise(6);
    const log = logOf(every(1, 3900), { board: { quantity: 'power', values: (t) => stepped(3, 10)(t) + random() } });
    const { figures } = derive(log, contextOf({ phases: PHASES }));
    const [energy, power] = [presentAt(figures, 'energy.load').quantity, presentAt(figures, 'load_power').quantity];
    expect(apart(energy.value, 3600 * power.value)).toBeLessThan(1e-3);
    expect(apart(u(energy), 3600 * u(power))).toBeLessThan(1e-3);
    const whole = presentAt(figures, 'energy').quantity;
    const idle = presentAt(figures, 'energy.idle').quantity;
    expect(apart(whole.value, energy.value + idle.value)).toBeLessThan(1e-12);
    expect(apart(u(whole), Math.hypot(u(energy), u(idle)))).toBeLessThan(1e-9);
  });

  test('independent scatter of readings averages out; a gain does not', () => {
    const random = noise(4);
    const meter = instrumentOf('meter', 'power', { ofReading: 0.01, coverage: 'standard' });
    const log = logOf(every(1, 3600), { board: { quantity: 'power', values: () => 10 + random(), instrument: 'meter' } });
    const { quantity } = presentAt(derive(log, contextOf({ instruments: { meter } })).figures, 'energy');
    const share = (kind: string) => Math.abs(quantity.parts!.find((part) => part.source.id.endsWith(kind))!.share);
    expect(apart(share('gain'), 0.01 * quantity.value)).toBeLessThan(1e-9);
    expect(apart(share('sampling'), Math.sqrt(1 / 12) * Math.sqrt(3600))).toBeLessThan(0.2);
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

    test('that was reset: the step across it is taken from the steps about it, and said', () => {
      const log = logOf(
        every(10, 3600),
        counter((t) => 8 * (t < 1805 ? t : t - 1805)),
      );
      const energy = presentAt(derive(log, contextOf()).figures, 'energy');
      expect(energy.quantity.value).toBeCloseTo(28_800, 6);
      expect(energy.inferred).toEqual([
        'The counter total fell 1 time: taken as a reset, and the step across it as the mean of the steps about it.',
      ]);
    });

    test('that was reset, with too few steps to tell: a bound', () => {
      const { figures } = derive(logOf([0, 1, 2, 3, 4], counter([100, 110, 120, 5, 15])), contextOf());
      expect(figures.get('energy')).toMatchObject({ absent: 'not-observed', bound: { relation: '>', value: 30, unit: 'J' } });
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
