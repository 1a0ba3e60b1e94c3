/** Boosts at the beginning of a load, seen and unseen: closed forms of linear devices. */
import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { isPresent } from '../../../src/figures/figure.ts';
import { phasesOf } from '../../../src/figures/phases.ts';
import { metersOf } from '../../../src/figures/power/meters.ts';
import { beginningOf } from '../../../src/figures/thermal/beginning.ts';
import { quantise, wandering } from '../../simulator/noise.ts';
import { random } from '../../simulator/random.ts';
import { contextOf, every, logOf, phase, presentAt } from '../build.ts';

const LOAD = 3600;
const CONSTANT = 300;

/** Rise of a part that would climb by `height`, at `times` the power until `until`. */
function part(height: number, constant: number, times: number, until: number): (t: number) => number {
  const boosted = (t: number) => times * height * (1 - Math.exp(-t / constant));
  return (t) => (t <= until ? boosted(t) : height + (boosted(until) - height) * Math.exp((until - t) / constant));
}

const CONTEXT = contextOf({ phases: [phase('load', 0, LOAD)] });

function logWith(rise: (t: number) => number, seed: number, power?: (t: number) => number) {
  const chance = random(seed);
  const noise = wandering(chance, 0.1, 10, 2);
  const offset = 22 + chance.uniform() / 10;
  return logOf(every(2, LOAD - 2), {
    soc: { quantity: 'temperature', values: (t) => quantise(offset + rise(t) + noise(), 0.1), step: 0.1 },
    ...(power ? { meter: { quantity: 'power', values: power } } : {}),
  });
}

describe('a boost that nobody saw', () => {
  test.each([
    [10, 1.5],
    [60, 2],
    [120, 1.5],
    [300, 1.25],
    [300, 2],
  ])('of %i s at %d times the power: the time constant holds, and no faster part is named', (until, times) => {
    const rise = (t: number) => part(32, CONSTANT, times, until)(t) + part(8, 30, times, until)(t);
    let held = 0;
    for (const seed of [1, 2, 3]) {
      const { figures } = derive(logWith(rise, seed), CONTEXT);
      const figure = figures.get('time_constant')!;
      if (!isPresent(figure)) continue;
      const [low, high] = figure.interval!;
      if (low <= CONSTANT && CONSTANT <= high) held++;
      expect(figure.of).toMatchObject({ load: 'not observed' });
      expect(isPresent(figures.get('second_time_constant')!)).toBe(false);
    }
    expect(held).toBeGreaterThanOrEqual(2);
  });
});

describe('a beginning that the power shows', () => {
  const seenIn = (power: (t: number) => number) => {
    const log = logWith(() => 0, 1, power);
    const soak = { log, context: CONTEXT, phases: phasesOf(log, CONTEXT).phases, inferred: [], warming: null };
    return beginningOf(soak, metersOf(soak).meters[0] ?? null);
  };

  test('ends where the power last jumps; leakage that comes slowly is no jump', () => {
    expect(seenIn((t) => (t < 60 ? 8.4 : 8))).toBe(70);
    expect(seenIn((t) => 8 * (1 + 0.1 * (1 - Math.exp(-t / CONSTANT))))).toBe(0);
    expect(seenIn((t) => (t < 1200 ? 8.4 : 8))).toBe(0);
    expect(seenIn((t) => (t % 300 < 20 ? 6 : 8))).toBe(0);
    const blind = logWith(() => 0, 1);
    expect(
      beginningOf({ log: blind, context: CONTEXT, phases: phasesOf(blind, CONTEXT).phases, inferred: [], warming: null }, null),
    ).toBeNull();
  });

  test('is left out, and the faster part of the device is given', () => {
    const boost = (t: number) => (t < 20 ? 8.6 : 8);
    const rise = (t: number) => part(32, CONSTANT, 8.6 / 8, 20)(t) + part(8, 60, 8.6 / 8, 20)(t);
    const { figures } = derive(logWith(rise, 3, boost), CONTEXT);
    const { interval, of } = presentAt(figures, 'second_time_constant');
    expect(of).toMatchObject({ skipped: expect.stringContaining('the first 30 s') });
    expect(interval![0]).toBeLessThan(60);
    expect(interval![1]).toBeGreaterThan(60);
  });
});
