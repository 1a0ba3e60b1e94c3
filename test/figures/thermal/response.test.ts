import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { interval95, standardUncertainty } from '../../../src/quantities/uncertainty.ts';
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
        const [low, high] = interval95(presentAt(figures, name).quantity)!;
        if (low <= truth && truth <= high) hits[name]++;
      }
    }
    expect(hits.time_constant).toBeGreaterThanOrEqual(34);
    expect(hits.asymptote_temperature).toBeGreaterThanOrEqual(34);
  });

  test('of a chip on a board the slower time constant is given', () => {
    const two = (t: number) => 62 - 12 * Math.exp(-t / 20) - 28 * Math.exp(-t / 600);
    const random = noise(3);
    const log = logOf(every(1, 3600), { soc: { quantity: 'temperature', values: (t) => two(t) + 0.1 * random() } });
    const { figures } = derive(log, contextOf());
    const constant = presentAt(figures, 'time_constant');
    expect(Math.abs(constant.quantity.value - 600)).toBeLessThan(4 * standardUncertainty(constant.quantity)!);
    expect(apart(constant.quantity.value, 600)).toBeLessThan(0.02);
    expect(constant.of).toMatchObject({ fit: 'two exponentials, the slower one is given' });
    expect(Math.abs(presentAt(figures, 'asymptote_temperature').quantity.value - 62)).toBeLessThan(0.1);
  });

  /** In how many of 40 logs with noise of this memory, and a fast part of this size, two exponentials were borne. */
  function foundTwo(fast: number, memory: number): number {
    const normal = gaussian(fast + 100 * memory);
    let found = 0;
    for (let run = 0; run < 40; run++) {
      const random = autoregressive(900, memory, normal);
      const course = (t: number, row: number) => 70 - fast * Math.exp(-t / 60) - 30 * Math.exp(-t / 700) + 0.3 * random[row]!;
      const values = stepped(Float64Array.from(every(4, 3596), course), 0.5);
      const { figures } = derive(logOf(every(4, 3596), { soc: { quantity: 'temperature', values, step: 0.5 } }), contextOf());
      if (presentAt(figures, 'time_constant').of?.fit === 'two exponentials, the slower one is given') found++;
    }
    return found;
  }

  test.each([0, 0.9])('a second part is found where there is one, and none invented where there is none; memory %d', (memory) => {
    expect(foundTwo(12, memory)).toBeGreaterThanOrEqual(38);
    expect(foundTwo(0, memory)).toBeLessThanOrEqual(1);
  });

  test('the fit shares its sources between both figures', () => {
    const random = noise(5);
    const log = logOf(every(1, 3600), { soc: { quantity: 'temperature', values: (t) => stepAt(t) + random() } });
    const { figures } = derive(log, contextOf());
    const ids = (name: string) =>
      presentAt(figures, name)
        .quantity.parts!.map((part) => part.source.id)
        .filter((id) => id.includes('/response/'));
    expect(ids('time_constant')).toEqual(['run:soak/response/1', 'run:soak/response/2', 'run:soak/response/model']);
    expect(ids('asymptote_temperature')).toEqual(['run:soak/response/1']);
  });

  test('a load of less than two time constants: the time constant is above half of it', () => {
    const log = logOf(every(1, 900), { soc: { quantity: 'temperature', values: stepAt } });
    const { figures } = derive(log, contextOf());
    expect(figures.get('time_constant')).toMatchObject({ absent: 'too-short', bound: { relation: '>', value: 450, unit: 's' } });
    const asymptote = figures.get('asymptote_temperature') as { absent: string; bound: { value: number; unit: string } };
    expect(asymptote.absent).toBe('too-short');
    expect(asymptote.bound.unit).toBe('s');
    expect(apart(asymptote.bound.value, 1200)).toBeLessThan(0.01);
  });

  test('a temperature that does not answer the load has no time constant', () => {
    const log = logOf(every(1, 3600), { soc: { quantity: 'temperature', values: () => 40 } });
    expect(derive(log, contextOf()).figures.get('time_constant')).toMatchObject({ absent: 'no-fit' });
  });

  test('a sawtooth is not a step response', () => {
    const log = logOf(every(1, 3600), { soc: { quantity: 'temperature', values: (t) => 40 + ((t / 60) % 10) } });
    expect(derive(log, contextOf()).figures.get('time_constant')).toMatchObject({ absent: 'no-fit' });
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
