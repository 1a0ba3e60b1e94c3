import { describe, expect, test } from 'vitest';
import { shownFigure } from '../../../../src/compute/contents/figure-text.ts';
import { rangeWarnings } from '../../../../src/compute/steps/runs/range-warnings.ts';
import type { InstrumentFacts } from '../../../../src/figures/context.ts';
import { derive } from '../../../../src/figures/derive.ts';
import type { HandReading } from '../../../../src/figures/hand/hand-reading.ts';
import type { SurfaceReading } from '../../../../src/figures/surface/surface-table.ts';
import type { QuantityKind } from '../../../../src/intake/log.ts';
import { contextOf, every, instrumentOf, logOf, phase, presentAt } from '../../../figures/build.ts';

const PLACE = { file: 'content/setups/bench.md', line: 12, column: 3 };

/** A run of ten minutes at `idle`, ten at `load`, of one channel. */
function runOf(quantity: QuantityKind, instrument: InstrumentFacts, idle: number, load: number) {
  const values = (t: number) => (t < 600 ? idle : load);
  const log = logOf(every(1, 1200), { meter: { quantity, values, instrument: 'wall', at: 'wall' } });
  const context = contextOf({ instruments: { wall: instrument }, phases: [phase('idle', 0, 600), phase('load', 600, 1200)] });
  const channels = [{ name: 'meter', quantity, column: 'METER', instrument: 'wall', place: PLACE }];
  const derived = derive(log, context);
  return { figures: derived.figures, problems: rangeWarnings(derived, { context, channels }) };
}

const meter = (accurate: InstrumentFacts['accurate'] = {}) =>
  instrumentOf(
    'wall',
    'power',
    { ofReading: 0.01 },
    { title: 'the wall meter', accurate, resolution: { power: { value: 0.01, unit: 'W', parts: [] } } },
  );

describe('compute/steps/runs/range-warnings', () => {
  test('a mean below the stated range is warned of at its channel, and its figure says so', () => {
    const { figures, problems } = runOf('power', meter({ power: { from: 0.5 } }), 0.31, 3);
    expect(problems).toEqual([
      {
        severity: 'warning',
        rule: 'below-accurate-range',
        place: PLACE,
        found: 'idle power 310 mW is below 500 mW, from where the wall meter is accurate',
        remedy: expect.any(String),
      },
    ]);
    const idle = presentAt(figures, 'idle_power');
    expect(idle.of).toMatchObject({ below_accurate_range: true });
    expect(shownFigure('idle_power', idle).detail).toContain('below the accurate range of its instrument');
    expect(presentAt(figures, 'load_power').of).not.toHaveProperty('below_accurate_range');
    expect(presentAt(figures, 'energy').of).not.toHaveProperty('below_accurate_range');
  });

  test('a display that was read outside the range is warned of at the reading', () => {
    const place = { file: 'content/runs/soak.md', line: 9, column: 5 };
    const one = {
      quantity: 'power',
      times: 1,
      lastDigit: 0.01,
      phase: 'load',
      shows: 'level',
      text: '',
      instrument: 'wall',
      place,
    };
    const readings = [
      { ...one, values: [0.31] },
      { ...one, values: [3] },
    ] as HandReading[];
    const context = contextOf({ instruments: { wall: meter({ power: { from: 0.5 } }) }, phases: [], readings });
    const figures = { figures: new Map(), phases: [], inferences: [] };
    expect(rangeWarnings(figures, { context, channels: [] })).toMatchObject([
      {
        rule: 'below-accurate-range',
        place,
        found: expect.stringMatching(/^power read by hand in `load`, 310 mW, is below 500 mW/),
      },
    ]);
  });

  test('a mean at the end of the range, and one without a stated range, are not warned of', () => {
    expect(runOf('power', meter({ power: { from: 0.5 } }), 0.5, 3).problems).toEqual([]);
    expect(runOf('power', meter(), 0.31, 3).problems).toEqual([]);
  });

  test('above the range: the mean and the peak', () => {
    const { problems } = runOf('power', meter({ power: { to: 2 } }), 0.31, 3);
    expect(problems.map(({ rule, found }) => `${rule}: ${found}`)).toEqual([
      'above-accurate-range: load power 3.00 W is above 2 W, up to which the wall meter is accurate',
      'above-accurate-range: peak power 3.00 W is above 2 W, up to which the wall meter is accurate',
      'above-accurate-range: power, 95th percentile 3.00 W is above 2 W, up to which the wall meter is accurate',
    ]);
  });

  // IEC 60584-1:2013, Table 12: type T is toleranced up to 350 °C, down to −40 °C (MEM).
  test('the range of a tolerance class counts, less what is stated', () => {
    const couple = (accurate: InstrumentFacts['accurate'] = {}) =>
      instrumentOf('wall', 'temperature', { absolute: 1, range: [-40, 350] }, { title: 'the couple', accurate });
    const rules = (accurate?: InstrumentFacts['accurate'], load = -50) =>
      runOf('temperature', couple(accurate), 20, load).problems.map(({ rule }) => rule);
    expect(rules()).toContain('below-accurate-range');
    expect(rules({ temperature: { from: -60 } })).toEqual([]);
    expect(rules({ temperature: { from: -60 } }, 360)).toContain('above-accurate-range');
  });

  test('a voltage outside marks what is computed from it, with one warning that names it all', () => {
    const values = (high: number) => (t: number) => (t < 600 ? high / 10 : high);
    const log = logOf(every(1, 1200), {
      soc: { quantity: 'temperature', values: (t: number) => (t < 600 ? 30 : 60) },
      volts: { quantity: 'voltage', values: () => 4.2, instrument: 'wall', at: 'rail' },
      amps: { quantity: 'current', values: values(2), instrument: 'wall', at: 'rail' },
    });
    const facts = instrumentOf(
      'wall',
      'voltage',
      { ofReading: 0.01 },
      { title: 'the meter', accurate: { voltage: { from: 4.5 } } },
    );
    const context = contextOf({
      instruments: { wall: facts },
      ambient: { value: 22, unit: '°C', parts: [] },
      phases: [phase('idle', 0, 600), phase('load', 600, 1200)],
    });
    const channels = (['voltage', 'current'] as const).map((quantity, k) => ({
      name: ['volts', 'amps'][k]!,
      quantity,
      column: '',
      instrument: 'wall',
      at: 'rail' as const,
      place: { ...PLACE, line: 20 + k },
    }));
    const derived = derive(log, context);
    expect(rangeWarnings(derived, { context, channels })).toEqual([
      {
        severity: 'warning',
        rule: 'below-accurate-range',
        place: { ...PLACE, line: 20 },
        found:
          'the mean of `volts` is below 4.5 V, from where the meter is accurate; computed from it: ' +
          'idle power, load power, peak power, power, 95th percentile, energy, energy (`energy.idle`), energy (`energy.load`)',
        remedy: expect.any(String),
      },
    ]);
    expect(presentAt(derived.figures, 'load_power').of).toMatchObject({
      below_accurate_range: true,
      below_accurate_range_of: 'volts',
    });
    expect(presentAt(derived.figures, 'load_current').of).not.toHaveProperty('below_accurate_range');
  });

  test('a spot that the camera does not read accurately: its reading is warned of at the table, all that comes of it is marked', () => {
    const spot = (name: string, reading: number): SurfaceReading => ({
      line: 2,
      spot: name,
      title: `${name} of the lid`,
      part: { id: 'lid', title: 'lid' },
      material: 'painted steel',
      contact: 'held',
      reading: { value: reading, u: null, step: 0.1 },
      emissivitySet: 1,
      emissivity: { value: 0.9, u: 0.01, step: 0.01 },
      reflected: { value: 22, u: 0.5, step: 0.1 },
      remedy: null,
    });
    const camera = instrumentOf(
      'camera',
      'temperature',
      { absolute: 2 },
      { title: 'the camera', accurate: { temperature: { to: 45 } } },
    );
    const context = contextOf({ instruments: { camera }, ambient: { value: 22, unit: '°C', parts: [] } });
    const surface = {
      file: 'data/lid.csv',
      instrument: 'camera',
      readings: [spot('middle', 46), spot('edge', 44)],
      columns: [],
      inferred: [],
    };
    const derived = derive(logOf(every(1, 100), {}), context, { surface });
    const tables = { surface: { file: 'lid.csv', place: { ...PLACE, line: 30 }, instrument: 'camera' } };
    expect(rangeWarnings(derived, { context, channels: [], tables })).toEqual([
      {
        severity: 'warning',
        rule: 'above-accurate-range',
        place: { ...PLACE, line: 30 },
        found: 'reading of surface temperature (`surface.middle`) 46.0 °C is above 45 °C, up to which the camera is accurate',
        remedy: expect.any(String),
      },
    ]);
    for (const address of ['surface.middle', 'hottest_surface', 'touch_margin.middle'])
      expect(presentAt(derived.figures, address).of).toMatchObject({ above_accurate_range: true });
    expect(presentAt(derived.figures, 'surface.edge').of).not.toHaveProperty('above_accurate_range');
  });
});
