/** A room that drifts while a device warms: closed form of a linear device under a linear drift. */
import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { interval95 } from '../../../src/quantities/uncertainty.ts';
import { quantise } from '../../simulator/noise.ts';
import { random } from '../../simulator/random.ts';
import { contextOf, every, logOf, phase, presentAt } from '../build.ts';

const LOAD = 7200;
const RISE = 40;

/** K/h. T' = (room + 40 − T)/τ with a room that drifts from the first second on: it lags by drift × τ in the end. */
function figuresOf(drift: number, constant: number, seed = 0, step = 0) {
  const chance = random(seed);
  const perSecond = drift / 3600;
  const room = (t: number) => 22 + perSecond * t;
  const settled = (t: number) => 1 - Math.exp(-t / constant);
  const values = (t: number) => room(t) + (RISE - perSecond * constant) * settled(t);
  const read = (value: number) => (step > 0 ? quantise(value + step * chance.normal(), step) : value);
  const log = logOf(every(5, LOAD), {
    soc: { quantity: 'temperature', values: (t) => read(values(t)), step },
    room: { quantity: 'ambient', values: (t) => read(room(t)), step },
  });
  return derive(log, contextOf({ phases: [phase('load', 0, LOAD)] })).figures;
}

describe('lag behind a room that drifts', () => {
  test('is drift × time constant, as a source of its own in the rise', () => {
    const lag = presentAt(figuresOf(2, 600), 'temperature_rise').quantity.parts!.find(
      ({ source }) => source.id === 'run:soak/lag.soc',
    );
    expect(lag!.share).toBeCloseTo((-2 * 600) / 3600, 2);
  });

  test.each([-3, 2, 6])('of %d K an hour is taken off before the response is fitted', (drift) => {
    const figures = figuresOf(drift, 600);
    expect(presentAt(figures, 'time_constant').quantity.value / 600).toBeCloseTo(1, 2);
    expect(presentAt(figures, 'asymptote_temperature').quantity.value).toBeCloseTo(22 + drift + RISE, 1);
    const { parts } = presentAt(figures, 'asymptote_temperature').quantity;
    expect(parts!.find(({ source }) => source.id === 'run:soak/response/lag')!.share).not.toBe(0);
  });

  test('is none in a room that keeps still', () => {
    const { parts } = presentAt(figuresOf(0, 600), 'temperature_rise').quantity;
    expect(parts!.some(({ source, share }) => source.id.includes('/lag') && Math.abs(share) > 1e-9)).toBe(false);
  });

  test('of rooms that drift by 1 K/h (standard deviation) the rise of a still room lies in the interval of 26 in 30 or more', () => {
    let [rise, end] = [0, 0];
    for (let seed = 1; seed <= 30; seed++) {
      const drift = random(1000 + seed).normal();
      const figures = figuresOf(drift, 600, seed, 0.1);
      const [low, high] = interval95(presentAt(figures, 'temperature_rise').quantity)!;
      if (low <= RISE && RISE <= high) rise++;
      const { interval } = presentAt(figures, 'asymptote_temperature');
      const truth = 22 + (drift / 3600) * (LOAD / 2) + RISE;
      if (interval![0] <= truth && truth <= interval![1]) end++;
    }
    expect(rise).toBeGreaterThanOrEqual(26);
    expect(end).toBeGreaterThanOrEqual(26);
  });
});
