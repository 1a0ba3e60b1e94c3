import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { subtract } from '../../../src/quantities/arithmetic.ts';
import type { Quantity } from '../../../src/quantities/quantity.ts';
import { standardUncertainty } from '../../../src/quantities/uncertainty.ts';
import { apart, contextOf, every, instrumentOf, logOf, noise, phase, presentAt, stepAt } from '../build.ts';

const PHASES = [phase('idle', 0, 300), phase('load', 300, Number.POSITIVE_INFINITY)];
const course = (t: number) => (t < 300 ? 22 : stepAt(t - 300));
const celsius = (value: number): Quantity => ({ value, unit: '°C', parts: [] });
const u = (quantity: Quantity) => standardUncertainty(quantity)!;

describe('means and extremes', () => {
  test('idle temperature is the mean of the idle rows', () => {
    const log = logOf([0, 1, 2, 3, 4, 5], { soc: { quantity: 'temperature', values: [20, 21, 22, 21, 50, 60] } });
    const { figures } = derive(log, contextOf({ phases: [phase('idle', 0, 4), phase('load', 4, 5)] }));
    const idle = presentAt(figures, 'idle_temperature');
    // trapezoidal weights ½ 1 1 ½: (10 + 21 + 22 + 10.5) / 3
    expect(apart(idle.quantity.value, 63.5 / 3)).toBeLessThan(1e-12);
    expect(idle.from).toEqual({ columns: ['time', 'SOC'], rows: [2, 5] });
  });

  test('the peak is that of the load phase, whatever idle and cool-down did', () => {
    const log = logOf([0, 1, 2, 3, 4, 5], { soc: { quantity: 'temperature', values: [99, 20, 50, 60, 55, 98] } });
    const { figures } = derive(log, contextOf({ phases: [phase('idle', 0, 2), phase('load', 2, 5), phase('cool-down', 5, 5)] }));
    expect(presentAt(figures, 'peak_temperature')).toMatchObject({
      quantity: { value: 60 },
      of: { phase: 'load', sampling: 'one reading in 1 s' },
    });
  });

  test('the interval of a peak reaches up to what hid between two samples', () => {
    // A triangle with its top of 80 °C half way between two samples, 1 K/s up and down: samples 79.5 and 79.5.
    const triangle = (t: number) => 80 - Math.abs(t - 50.5);
    const log = logOf(every(1, 100), { soc: { quantity: 'temperature', values: triangle } });
    const peak = presentAt(derive(log, contextOf()).figures, 'peak_temperature');
    expect(peak.quantity.value).toBe(79.5);
    expect(peak.interval![1]).toBeGreaterThanOrEqual(80);
    expect(peak.interval![1] - peak.quantity.value).toBeGreaterThan(peak.quantity.value - peak.interval![0]);
  });

  test('several channels: the first stands under the bare name, the others under their own', () => {
    const log = logOf(every(1, 600), {
      soc: { quantity: 'temperature', values: () => 50 },
      ssd: { quantity: 'temperature', values: () => 40 },
    });
    const { figures } = derive(log, contextOf());
    expect(presentAt(figures, 'peak_temperature').quantity.value).toBe(50);
    expect(presentAt(figures, 'peak_temperature.ssd').quantity.value).toBe(40);
    expect(figures.has('peak_temperature.soc')).toBe(false);
    expect(figures.get('time_constant.ssd')).toMatchObject({ absent: 'no-fit', of: { channel: 'ssd' } });
  });

  test('a gap is left out of a mean, and named', () => {
    const times = [...every(1, 100), ...every(1, 100).map((t) => t + 1000)];
    const log = logOf(times, { soc: { quantity: 'temperature', values: (t) => (t < 500 ? 20 : 40) } });
    const { figures } = derive(log, contextOf({ phases: [phase('idle', 0, 2000)] }));
    const idle = presentAt(figures, 'idle_temperature');
    expect(apart(idle.quantity.value, 30)).toBeLessThan(1e-12);
    expect(idle.of).toMatchObject({ gaps: '1 gap, 15 min left out' });
  });
});

describe('uncertainty', () => {
  const probe = instrumentOf('probe', 'temperature', { absolute: 1.5 });

  test('limits of ± 1.5 K become a standard uncertainty of 1.5/√3 (JCGM 100:2008, 4.3.7)', () => {
    const log = logOf(every(1, 600), { soc: { quantity: 'temperature', values: () => 50, instrument: 'probe' } });
    const { quantity } = presentAt(derive(log, contextOf({ instruments: { probe } })).figures, 'peak_temperature');
    expect(apart(u(quantity), 1.5 / Math.sqrt(3))).toBeLessThan(1e-9);
    expect(quantity.parts!.map((part) => part.source.id)).toEqual(['instrument:probe/temperature/offset']);
    expect(quantity.repeatabilityOnly).toBeUndefined();
  });

  test('without stated accuracy a figure is repeatability only, and no finer than step/√12 (JCGM 100:2008, F.2.2.1)', () => {
    const log = logOf(every(1, 600), { soc: { quantity: 'temperature', values: () => 50, step: 0.5 } });
    const { quantity } = presentAt(derive(log, contextOf()).figures, 'peak_temperature');
    expect(quantity.repeatabilityOnly).toBe(true);
    expect(quantity.step).toBe(0.5);
    expect(apart(u(quantity), 0.5 / Math.sqrt(12))).toBeLessThan(1e-12);
  });

  test('the steady temperatures of two runs on one instrument: its offset cancels in their difference', () => {
    const steady = (run: string, lift: number, specimen: string, part = false) => {
      const random = noise(lift + 1);
      const log = logOf(every(1, 3600), {
        soc: { quantity: 'temperature', values: (t) => stepAt(t) + lift + 0.2 * random(), instrument: 'probe' },
      });
      const context = contextOf({ run, specimen, instruments: { probe: { ...probe, partOfSpecimen: part } } });
      return presentAt(derive(log, context).figures, 'steady_temperature').quantity;
    };
    const difference = (a: Quantity, b: Quantity) => subtract(a, b) as Quantity;
    const shared = difference(steady('fast', 5, 'no-1'), steady('rated', 0, 'no-1'));
    expect(u(steady('fast', 5, 'no-1'))).toBeGreaterThan(0.8);
    expect(u(shared)).toBeLessThan(0.3);
    const sameDie = difference(steady('fast', 5, 'no-1', true), steady('rated', 0, 'no-1', true));
    expect(u(sameDie)).toBeLessThan(0.3);
    const otherDie = difference(steady('fast', 5, 'no-2', true), steady('rated', 0, 'no-1', true));
    expect(otherDie.parts!.map((each) => each.source.id)).toContain('instrument:probe@larch/no-2/temperature/offset');
    expect(u(otherDie)).toBeGreaterThan(1.2);
  });

  test('a drift within the window widens the mean: readings of a slow quantity repeat each other', () => {
    const mean = (values: (t: number) => number) =>
      presentAt(
        derive(logOf(every(1, 3600), { soc: { quantity: 'temperature', values } }), contextOf()).figures,
        'steady_temperature',
      );
    const random = noise(2);
    const independent = u(mean(() => 50 + random()).quantity);
    let state = 0;
    const wander = () => {
      state = 0.95 * state + 0.3 * random();
      return 50 + state;
    };
    const following = u(mean(wander).quantity);
    expect(independent).toBeLessThan(0.02);
    expect(following).toBeGreaterThan(3 * independent);
  });
});

describe('rise over ambient', () => {
  const log = logOf(every(1, 4500), {
    soc: { quantity: 'temperature', values: course, instrument: 'thermometer' },
    room: { quantity: 'ambient', values: () => 22, instrument: 'thermometer' },
    meter: { quantity: 'power', values: (t) => (t < 300 ? 3 : 8), at: 'board input' },
  });

  test('uses the stated ambient where none is measured, and says so', () => {
    const ambient: Quantity = {
      value: 22,
      unit: '°C',
      parts: [{ source: { id: 'run:soak/ambient', title: 'ambient', dof: null }, share: 0.5 }],
    };
    const { figures } = derive(
      logOf(every(1, 4500), { soc: { quantity: 'temperature', values: course } }),
      contextOf({ ambient, phases: PHASES }),
    );
    const rise = presentAt(figures, 'temperature_rise');
    expect(rise.of).toMatchObject({ ambient: 'stated' });
    expect(rise.quantity.unit).toBe('K');
    const steady = presentAt(figures, 'steady_temperature').quantity;
    expect(rise.quantity.value).toBe(steady.value - 22);
    expect(apart(u(rise.quantity), Math.hypot(u(steady), 0.5))).toBeLessThan(1e-9);
  });

  test('prefers the measured one', () => {
    const rise = presentAt(derive(log, contextOf({ ambient: celsius(10), phases: PHASES })).figures, 'temperature_rise');
    expect(rise.of).toMatchObject({ ambient: 'measured, channel room' });
    expect(rise.from.columns).toEqual(['time', 'SOC', 'ROOM']);
    expect(rise.quantity.value).toBeGreaterThan(39);
  });

  test('correlated difference and K/W: 60 °C and 22 °C, both u 1.5 K, 8 W ± 1 % (JCGM 100:2008, eq. 16)', () => {
    // 38 K / 8 W = 4.75 K/W; u = 0.269386 without correlation, 0.0475 where the offset is shared: then only the power is left.
    const flat = (own: string) =>
      logOf(every(1, 3600), {
        soc: { quantity: 'temperature', values: () => 60, instrument: 'a' },
        room: { quantity: 'ambient', values: () => 22, instrument: own },
        meter: { quantity: 'power', values: () => 8, instrument: 'meter' },
      });
    const standard = { absolute: 1.5, coverage: 'standard' } as const;
    const both = (id: string) => {
      const temperature = instrumentOf(id, 'temperature', standard);
      return { ...temperature, accuracy: { ...temperature.accuracy, ambient: temperature.accuracy.temperature! } };
    };
    const instruments = {
      a: both('a'),
      b: both('b'),
      meter: instrumentOf('meter', 'power', { ofReading: 0.01, coverage: 'standard' }),
    };
    const perWatt = (own: string) => presentAt(derive(flat(own), contextOf({ instruments })).figures, 'rise_per_watt').quantity;
    expect(apart(perWatt('b').value, 4.75)).toBeLessThan(1e-12);
    expect(perWatt('b').unit).toBe('K/W');
    expect(apart(u(perWatt('b')), 0.269386)).toBeLessThan(1e-5);
    expect(apart(u(perWatt('a')), 0.0475)).toBeLessThan(1e-5);
  });

  test('rise per watt says which power', () => {
    const figure = presentAt(derive(log, contextOf({ phases: PHASES })).figures, 'rise_per_watt');
    expect(figure.of).toMatchObject({ power: 'meter', power_at: 'board input' });
    expect(figure.from.columns).toEqual(['time', 'SOC', 'ROOM', 'METER']);
  });
});

describe('against the limit', () => {
  const device = { id: 'larch', throttleAt: { soc: celsius(85) } };

  test('headroom is the limit less the peak, negative when it was passed', () => {
    const log = logOf(every(1, 600), { soc: { quantity: 'temperature', values: (t) => (t === 300 ? 86.5 : 70) } });
    expect(presentAt(derive(log, contextOf({ device })).figures, 'throttle_headroom').quantity).toMatchObject({
      value: -1.5,
      unit: 'K',
    });
  });

  test('held at the limit counts from 1 K below; zero is a value', () => {
    const held = (values: (t: number) => number) =>
      presentAt(
        derive(logOf(every(1, 600), { soc: { quantity: 'temperature', values } }), contextOf({ device })).figures,
        'held_at_limit',
      ).quantity;
    expect(held((t) => (t >= 100 && t < 250 ? 84 : 70)).value).toBe(150);
    expect(held(() => 70).value).toBe(0);
    // Two changes of state, each known to a step/√12.
    expect(apart(u(held((t) => (t >= 100 && t < 250 ? 84 : 70))), Math.sqrt(2 / 12))).toBeLessThan(1e-12);
  });

  test('held there by a governor, the temperature says so, and neither fit nor ceiling is made of it', () => {
    // Throttled from the first minute, ten seconds on and ten off: power and clock are even from then on.
    const throttled = (t: number) => (t >= 60 && t % 20 < 10 ? 1 : 0);
    const sketch = {
      soc: { quantity: 'temperature', values: (t: number) => 85 - 50 * Math.exp(-t / 200) },
      flag: { quantity: 'throttle_flag', values: throttled },
      core: { quantity: 'clock', values: (t: number) => (throttled(t) ? 1.8e9 : 2e9) },
    } as const;
    const { figures } = derive(logOf(every(1, 3600), sketch), contextOf({ device, ambient: celsius(22) }));
    const held = 'held at its limit by the governor: the clock and the power are what settles';
    for (const name of ['steady_temperature', 'temperature_rise', 'time_to_steady_state'])
      expect(presentAt(figures, name).of).toMatchObject({ held });
    for (const name of ['time_constant', 'asymptote_temperature', 'ambient_ceiling'])
      expect(figures.get(name)).toMatchObject({ absent: 'load-changed' });
    const cool = derive(logOf(every(1, 3600), { soc: sketch.soc }), contextOf({ device, ambient: celsius(22) })).figures;
    expect(presentAt(cool, 'steady_temperature').of).not.toHaveProperty('held');
    expect(cool.get('ambient_ceiling')).toMatchObject({ absent: 'undecided' });
  });

  const ceiling = (limit: number, ambient = 22) => {
    const log = logOf(every(1, 3600), { soc: { quantity: 'temperature', values: (t) => 60 - 30 * Math.exp(-t / 200) } });
    return derive(log, contextOf({ ambient: celsius(ambient), device: { id: 'larch', throttleAt: { soc: celsius(limit) } } }))
      .figures;
  };

  test('the ambient ceiling is the limit less the rise', () => {
    const { value, unit } = presentAt(ceiling(65), 'ambient_ceiling').quantity;
    expect(unit).toBe('°C');
    expect(value).toBeCloseTo(27, 6);
  });

  test('beyond 10 K of the tested ambient the ceiling is a bound only', () => {
    expect(ceiling(85).get('ambient_ceiling')).toMatchObject({
      absent: 'out-of-range',
      bound: { relation: '>', value: 32, unit: '°C' },
    });
    expect(ceiling(45).get('ambient_ceiling')).toMatchObject({
      absent: 'out-of-range',
      bound: { relation: '<', value: 12, unit: '°C' },
    });
  });

  test('a limit in another unit is refused, not converted', () => {
    const log = logOf(every(1, 600), { soc: { quantity: 'temperature', values: () => 60 } });
    const { figures } = derive(
      log,
      contextOf({ device: { id: 'larch', throttleAt: { soc: { value: 358, unit: 'K', parts: [] } } } }),
    );
    expect(figures.get('throttle_headroom')).toMatchObject({ absent: 'no-rating' });
  });
});
