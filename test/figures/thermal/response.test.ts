import { describe, expect, test } from 'vitest';
import type { FigureName } from '../../../src/figures/catalogue.ts';
import { derive } from '../../../src/figures/derive.ts';
import { isPresent } from '../../../src/figures/figure.ts';
import { standardUncertainty } from '../../../src/quantities/uncertainty.ts';
import { autoregressive, gaussian, stepped } from '../../statistics/noise.ts';
import { apart, contextOf, every, logOf, noise, phase, presentAt, STEP, stepAt } from '../build.ts';

/** Autocorrelated noise: a first-order autoregression with coefficient 0.95, K. */
function slowNoise(seed: number, size: number): (t: number) => number {
  const random = noise(seed);
  let state = 0;
  return () => {
    state = 0.95 * state + size * random();
    return state;
  };
}

describe('time constant and asymptote (closed form of one exact exponential step)', () => {
  test('an exact step gives its own parameters', () => {
    const { figures } = derive(logOf(every(1, 3600), { soc: { quantity: 'temperature', values: stepAt } }), contextOf());
    expect(apart(presentAt(figures, 'time_constant').quantity.value, STEP.timeConstant)).toBeLessThan(1e-3);
    expect(apart(presentAt(figures, 'asymptote_temperature').quantity.value, STEP.asymptote)).toBeLessThan(1e-4);
  });

  test('the 95 % intervals cover the truth under noise that follows itself', () => {
    const hits = { time_constant: 0, asymptote_temperature: 0 };
    for (let seed = 1; seed <= 40; seed++) {
      const random = slowNoise(seed * 7919, 0.3);
      const log = logOf(every(2, 3600), { soc: { quantity: 'temperature', values: (t) => stepAt(t) + random(t) } });
      const { figures } = derive(log, contextOf());
      for (const [name, truth] of [
        ['time_constant', 600],
        ['asymptote_temperature', 62],
      ] as const) {
        const [low, high] = presentAt(figures, name).interval!;
        if (low <= truth && truth <= high) hits[name]++;
      }
    }
    expect(hits.time_constant).toBeGreaterThanOrEqual(34);
    expect(hits.asymptote_temperature).toBeGreaterThanOrEqual(34);
  });

  test('of a chip on a board the slower time constant is given', () => {
    const two = (t: number) => 62 - 12 * Math.exp(-t / 20) - 28 * Math.exp(-t / 600);
    const random = noise(3);
    const log = logOf(every(1, 3600), {
      soc: { quantity: 'temperature', values: (t) => two(t) + 0.1 * random() },
      meter: { quantity: 'power', values: () => 8 },
    });
    const { figures } = derive(log, contextOf());
    const constant = presentAt(figures, 'time_constant');
    expect(Math.abs(constant.quantity.value - 600)).toBeLessThan(4 * standardUncertainty(constant.quantity)!);
    expect(apart(constant.quantity.value, 600)).toBeLessThan(0.02);
    expect(constant.of).toMatchObject({ fit: 'two exponentials, the second part is the faster one' });
    expect(apart(presentAt(figures, 'second_time_constant').quantity.value, 20)).toBeLessThan(0.05);
    expect(apart(presentAt(figures, 'response_amplitude').quantity.value, 28)).toBeLessThan(0.01);
    expect(apart(presentAt(figures, 'second_amplitude').quantity.value, 12)).toBeLessThan(0.03);
    expect(Math.abs(presentAt(figures, 'asymptote_temperature').quantity.value - 62)).toBeLessThan(0.1);
  });

  test('each part of the rise is divided by the power that was added', () => {
    const two = (s: number) => (s < 0 ? 22 : 62 - 12 * Math.exp(-s / 20) - 28 * Math.exp(-s / 600));
    const random = noise(3);
    const log = logOf(every(1, 3900), {
      soc: { quantity: 'temperature', values: (t) => two(t - 300) + 0.1 * random() },
      board: { quantity: 'power', values: (t) => (t < 300 ? 2 : 8) },
    });
    const { figures } = derive(log, contextOf({ phases: [phase('idle', 0, 300), phase('load', 300, 3900)] }));
    const value = (name: FigureName) => presentAt(figures, name).quantity.value;
    expect(apart(value('amplitude_per_watt'), value('response_amplitude') / 6)).toBeLessThan(1e-9);
    expect(apart(value('second_amplitude_per_watt'), value('second_amplitude') / 6)).toBeLessThan(1e-9);
    expect(presentAt(figures, 'amplitude_per_watt').quantity.unit).toBe('K/W');
  });

  /** In how many of 40 logs with noise of this memory, and a fast part of this size, two exponentials were borne. */
  function foundTwo(fast: number, memory: number): number {
    const normal = gaussian(fast + 100 * memory);
    let found = 0;
    for (let run = 0; run < 40; run++) {
      const random = autoregressive(900, memory, normal);
      const course = (t: number, row: number) => 70 - fast * Math.exp(-t / 60) - 30 * Math.exp(-t / 700) + 0.3 * random[row]!;
      const values = stepped(Float64Array.from(every(8, 7192), course), 0.5);
      const log = logOf(every(8, 7192), {
        soc: { quantity: 'temperature', values, step: 0.5 },
        meter: { quantity: 'power', values: () => 8 },
      });
      const { figures } = derive(log, contextOf());
      const figure = figures.get('time_constant')!;
      if (isPresent(figure) && figure.of?.fit === 'two exponentials, the second part is the faster one') found++;
    }
    return found;
  }

  test.each([0, 0.9])('a second part is found where there is one, and none invented where there is none; memory %d', (memory) => {
    expect(foundTwo(12, memory)).toBeGreaterThanOrEqual(38);
    expect(foundTwo(0, memory)).toBeLessThanOrEqual(1);
  });

  // Three masses: a chip that is over in seconds, its board, and its case. Two exponentials can't tell all of it.
  test.each([
    [1200, 6, 8],
    [3600, 6, 8],
    [3600, 2, 10],
  ])('of three parts, in a load of %i s, with %i K in 15 s and %i K in 1500 s, the main one stays inside', (lasts, quick, slow) => {
    let [there, held, cooled] = [0, 0, 0];
    for (let seed = 1; seed <= 12; seed++) {
      const normal = gaussian(seed);
      const left = (t: number) => quick * Math.exp(-t / 15) + 28 * Math.exp(-t / 300) + slow * Math.exp(-t / 1500);
      const rise = (t: number) => (t < lasts ? left(0) - left(t) : left(t - lasts) - left(t));
      const log = logOf(every(1, 2 * lasts - 1), {
        soc: { quantity: 'temperature', values: (t) => Math.round(10 * (22 + rise(t) + 0.2 * normal())) / 10, step: 0.1 },
        meter: { quantity: 'power', values: (t) => (t < lasts ? 10 : 2) },
      });
      const phases = [phase('load', 0, lasts), phase('cool-down', lasts, 2 * lasts)];
      const { figures } = derive(log, contextOf({ phases }));
      const inside = (name: string) => {
        const figure = figures.get(name)!;
        return isPresent(figure) ? figure.interval![0] <= 300 && 300 <= figure.interval![1] : null;
      };
      if (inside('time_constant') !== null) there++;
      if (inside('time_constant')) held++;
      if (inside('cooling_time_constant') !== false) cooled++;
    }
    expect(there).toBeGreaterThanOrEqual(6);
    expect(there - held).toBeLessThanOrEqual(1);
    expect(cooled).toBeGreaterThanOrEqual(11);
  });

  test.each([
    ['a room that waves by 2 K, unseen', (t: number) => 2 * Math.sin((2 * Math.PI * t) / 1800), 3600],
    ['a load of half an hour in a room that waves by 1 K', (t: number) => Math.sin((2 * Math.PI * t) / 700), 1800],
  ])('%s: the reason names waves, not a step that is too small', (_, wave, lasts) => {
    const normal = gaussian(1);
    const values = (t: number) => Math.round(10 * (stepAt(t) + wave(t) + 0.1 * normal())) / 10;
    const log = logOf(every(1, lasts), { soc: { quantity: 'temperature', values, step: 0.1 } });
    expect(derive(log, contextOf({ phases: [phase('load', 0, lasts)] })).figures.get('time_constant')).toMatchObject({
      absent: 'no-fit',
      why: expect.stringMatching(
        /K off (a step response, for .* at a time, as where the room or the load changes|the nearest one)/,
      ),
    });
  });

  test('the fit shares its sources between both figures', () => {
    const random = noise(5);
    const log = logOf(every(1, 3600), { soc: { quantity: 'temperature', values: (t) => stepAt(t) + random() } });
    const { figures } = derive(log, contextOf());
    const ids = (name: string) =>
      presentAt(figures, name)
        .quantity.parts!.map((part) => part.source.id)
        .filter((id) => id.includes('/response/'));
    expect(ids('time_constant')).toEqual([
      'run:soak/response/1',
      'run:soak/response/2',
      'run:soak/response/3',
      'run:soak/response/model-3',
    ]);
    expect(ids('asymptote_temperature')).toEqual(['run:soak/response/1', 'run:soak/response/model-1']);
  });

  test('a load of less than two time constants: the time constant is above a quarter of it, and the end has no bound in seconds', () => {
    const log = logOf(every(1, 900), { soc: { quantity: 'temperature', values: stepAt } });
    const { figures } = derive(log, contextOf());
    expect(figures.get('time_constant')).toMatchObject({ absent: 'too-short', bound: { relation: '>', value: 225, unit: 's' } });
    expect(figures.get('asymptote_temperature')).toMatchObject({ absent: 'too-short' });
    expect(figures.get('asymptote_temperature')).not.toHaveProperty('bound');
  });

  test('35 K with 300 s and 5 K with 7200 s on a sensor of 0.1 K: both parts, the end at 64 °C and the ceiling that hangs on it', () => {
    const course = (t: number) => Math.round(10 * (64 - 35 * Math.exp(-t / 300) - 5 * Math.exp(-t / 7200))) / 10;
    const log = logOf(every(1, 3600), { soc: { quantity: 'temperature', values: course, step: 0.1 } });
    const { figures } = derive(
      log,
      contextOf({
        ambient: { value: 24, unit: '°C', parts: [] },
        device: { id: 'larch', throttleAt: { soc: { value: 65, unit: '°C', parts: [] } } },
      }),
    );
    const holds = (name: string, truth: number, width: number) => {
      const [low, high] = presentAt(figures, name).interval!;
      expect([name, low <= truth && truth <= high]).toEqual([name, true]);
      expect([name, high - low < width]).toEqual([name, true]);
    };
    // Nobody saw the load: its first minutes may have been a boost, for which the interval makes room.
    holds('time_constant', 300, 60);
    holds('second_time_constant', 7200, 6000);
    holds('response_amplitude', 35, 2);
    holds('second_amplitude', 5, 3);
    holds('asymptote_temperature', 64, 4);
    holds('ambient_ceiling', 25, 4);
    expect(presentAt(figures, 'ambient_ceiling').of).toMatchObject({ load: 'not observed' });
  });

  test('a slower part that the load does not end leaves no end, but what it lies above', () => {
    const course = (t: number) => Math.round(10 * (64 - 30 * Math.exp(-t / 300) - 10 * Math.exp(-t / 7200))) / 10;
    const log = logOf(every(1, 1800), { soc: { quantity: 'temperature', values: course, step: 0.1 } });
    const { figures } = derive(log, contextOf());
    const { absent, bound } = figures.get('asymptote_temperature') as { absent: string; bound: { value: number; unit: string } };
    expect(absent).toBe('too-short');
    expect(bound.unit).toBe('°C');
    expect(bound.value).toBeLessThan(64);
    expect(bound.value).toBeGreaterThan(54);
  });

  test.each([30, 60, 120])(
    'a boost of %d s by half at the start is left out where it shows, and the time constant holds',
    (boost) => {
      const rise = (t: number) => (t < 0 ? 0 : 40 * (1 - Math.exp(-t / 600)));
      const normal = gaussian(boost);
      const values = (t: number) => Math.round(10 * (22 + 1.5 * rise(t) - 0.5 * rise(t - boost) + 0.1 * normal())) / 10;
      const { figures } = derive(logOf(every(1, 5400), { soc: { quantity: 'temperature', values, step: 0.1 } }), contextOf());
      for (const [name, truth] of [
        ['time_constant', 600],
        ['asymptote_temperature', 62],
      ] as const) {
        const [low, high] = presentAt(figures, name).interval!;
        expect([name, low <= truth && truth <= high]).toEqual([name, true]);
      }
      if (boost === 30) return;
      expect(presentAt(figures, 'time_constant').of?.skipped).toMatch(/^the first .* do not follow the rest and are left out$/);
      expect(figures.get('response_amplitude')).toMatchObject({ absent: 'load-changed' });
    },
  );

  test('a temperature that does not answer the load has no time constant', () => {
    const log = logOf(every(1, 3600), { soc: { quantity: 'temperature', values: () => 40 } });
    expect(derive(log, contextOf()).figures.get('time_constant')).toMatchObject({ absent: 'no-fit' });
  });

  test('a load that creeps has no end: the temperature ends above where it got, and is not extrapolated', () => {
    const random = noise(3);
    for (const creep of [0.04, 0.08]) {
      let [rise, end] = [0, 0];
      const rises = Float64Array.from({ length: 4201 }, (_, t) => {
        const before = rise;
        end = 30 * (1 + (creep * t) / 4200);
        rise += (end - rise) / 300;
        return before;
      });
      const values = (t: number) => 22 + rises[t]! + 0.1 * random();
      const log = logOf(every(1, 4200), { soc: { quantity: 'temperature', values, step: 0.1 } });
      const asymptote = derive(log, contextOf({ phases: [phase('load', 0, 4200)] })).figures.get('asymptote_temperature')!;
      expect(asymptote).toMatchObject({ absent: 'too-short', bound: { relation: '>' } });
      const { value } = (asymptote as Extract<typeof asymptote, { absent: unknown }>).bound!;
      expect(value).toBeLessThan(22 + end);
      expect(value).toBeGreaterThan(22 + end - 1);
    }
  });

  test('a sawtooth is not a step response: many teeth are a swing, few of them no fit', () => {
    const saw = (period: number) =>
      logOf(every(1, 3600), { soc: { quantity: 'temperature', values: (t) => 40 + 10 * ((t / period) % 1) } });
    const constant = (period: number) => derive(saw(period), contextOf()).figures.get('time_constant');
    expect(constant(600)).toMatchObject({
      absent: 'load-changed',
      why: expect.stringContaining('swung by about 10 K every 10 min'),
    });
    expect(constant(1500)).toMatchObject({ absent: 'no-fit' });
  });

  test.each([
    ['throttled', (t: number) => (t > 1200 ? 1.8e9 : 2.6e9)],
    ['boosted', (t: number) => (t < 60 ? 3e9 : 2.6e9)],
  ])('a load whose clock changed (%s) gives none, and says when', (_, clock) => {
    const log = logOf(every(1, 3600), {
      soc: { quantity: 'temperature', values: stepAt },
      core: { quantity: 'clock', values: clock },
    });
    const { figures } = derive(
      log,
      contextOf({ device: { id: 'larch', throttleAt: { soc: { value: 70, unit: '°C', parts: [] } } } }),
    );
    for (const name of ['time_constant', 'asymptote_temperature', 'ambient_ceiling']) {
      expect(figures.get(name)).toMatchObject({ absent: 'load-changed' });
      expect((figures.get(name) as { why: string }).why).toMatch(
        /^The clock \(channel core\) was \d+(\.\d)? % (above|below) its median from .* of the load/,
      );
    }
  });

  test('the load begins where its phase begins', () => {
    const log = logOf(every(1, 4200), { soc: { quantity: 'temperature', values: (t) => (t < 600 ? 22 : stepAt(t - 600)) } });
    const { figures } = derive(log, contextOf({ phases: [phase('idle', 0, 600), phase('load', 600, 4200)] }));
    expect(apart(presentAt(figures, 'time_constant').quantity.value, 600)).toBeLessThan(1e-3);
  });
});
