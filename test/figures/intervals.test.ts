/** Intervals that are not value ± t·u, and what enters fits besides scatter. How often they hold the truth: test/coverage. */
import { describe, expect, test } from 'vitest';
import { derive } from '../../src/figures/derive.ts';
import { interval95 } from '../../src/quantities/uncertainty.ts';
import { apart, contextOf, every, instrumentOf, logOf, noise, presentAt, STEP, stepAt } from './build.ts';

const celsius = (value: number) => ({ value, unit: '°C', parts: [] });

describe('figures: lopsided intervals', () => {
  test('headroom is the mirror of the peak at the limit', () => {
    const random = noise(4);
    const log = logOf(every(1, 1200), { soc: { quantity: 'temperature', values: (t) => stepAt(t) + random(), instrument: 'die' } });
    const device = { id: 'larch', throttleAt: { soc: celsius(84) } };
    const instruments = { die: instrumentOf('die', 'temperature', { absolute: 1 }) };
    const { figures } = derive(log, contextOf({ device, instruments }));
    const [low, high] = presentAt(figures, 'peak_temperature').interval!;
    const [least, most] = presentAt(figures, 'throttle_headroom').interval!;
    expect(apart(least, 84 - high)).toBeLessThan(1e-12);
    expect(apart(most, 84 - low)).toBeLessThan(1e-12);
  });

  test('throttling began within the step before the reading that first shows it', () => {
    const log = logOf(every(5, 600), {
      core: { quantity: 'clock', values: () => 2e9 },
      flag: { quantity: 'throttle_flag', values: (t) => (t >= 123 ? 1 : 0) },
    });
    const { quantity, interval } = presentAt(derive(log, contextOf()).figures, 'time_to_throttle');
    expect([quantity.value, interval]).toEqual([125, [120, 125]]);
  });

  test('time to steady state: a few rows to each side without noise; with it the fit keeps it narrow, and it holds the closed form', () => {
    const timed = (size: number, seed: number) => {
      const random = noise(seed);
      const log = logOf(every(1, 7200), { soc: { quantity: 'temperature', values: (t) => stepAt(t) + size * random() } });
      const { quantity, interval } = presentAt(derive(log, contextOf()).figures, 'time_to_steady_state');
      return { value: quantity.value, before: quantity.value - interval![0], after: interval![1] - quantity.value };
    };
    const exact = timed(0, 1);
    for (const side of [exact.before, exact.after]) {
      expect(side).toBeGreaterThanOrEqual(1);
      expect(side).toBeLessThan(15);
    }
    const loud = Array.from({ length: 10 }, (_, seed) => timed(1.5, seed + 1));
    const truth = 600 * Math.log(40 * (1 - Math.exp(-900 / 600)));
    const holds = loud.filter(({ value, before, after }) => value - before <= truth && truth <= value + after);
    expect(holds.length).toBeGreaterThanOrEqual(9);
    for (const { before, after } of loud) expect(before + after).toBeLessThan(300);
  });
});

describe('figures: what enters a fit besides scatter', () => {
  const parts = (log: Parameters<typeof derive>[0], context: Parameters<typeof contextOf>[0]) =>
    presentAt(derive(log, contextOf(context)).figures, 'time_constant').quantity.parts!.map(
      ({ source, share }) => [source.id, share] as const,
    );
  const soc = { quantity: 'temperature', values: stepAt } as const;
  const ambient = {
    value: 22,
    unit: '°C',
    parts: [{ source: { id: 'run:soak/ambient', title: 'ambient', dof: null }, share: 0.3 }],
  };

  test('a stated ambient may have drifted by its uncertainty; one that is measured was taken off, one that is exact did not', () => {
    const stated = new Map(parts(logOf(every(1, 3600), { soc }), { ambient }));
    const measured = new Map(parts(logOf(every(1, 3600), { soc, room: { quantity: 'ambient', values: () => 22 } }), { ambient }));
    const exact = new Map(parts(logOf(every(1, 3600), { soc }), { ambient: celsius(22) }));
    expect(stated.get('run:soak/response/ambient')).toBeGreaterThan(2);
    expect(stated.get('run:soak/response/ambient')).toBeLessThan(30);
    expect([measured, exact].map((each) => each.has('run:soak/response/ambient'))).toEqual([false, false]);
  });

  test('what the model leaves out is 1.25 % of the time constant', () => {
    // Of one exponential, the third parameter: after asymptote and amplitude.
    const model = new Map(parts(logOf(every(1, 3600), { soc }), {})).get('run:soak/response/model-3')!;
    expect(apart(model, 0.0125 * STEP.timeConstant)).toBeLessThan(1e-6);
  });

  test('a rise by two bumps over ten minutes counts as scatter of the sustained clock', () => {
    const clock = (t: number) => (t < 3300 ? 2.4e9 : 2.3e9);
    const log = logOf(every(2, 3600), { core: { quantity: 'clock', values: clock } });
    const { quantity } = presentAt(derive(log, contextOf()).figures, 'sustained_ratio');
    const [low, high] = interval95(quantity)!;
    expect(apart(quantity.value, 2.35 / 2.4)).toBeLessThan(1e-3);
    expect(high - low).toBeGreaterThan(0.05);
  });
});
