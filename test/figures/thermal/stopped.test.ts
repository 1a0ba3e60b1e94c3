import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import type { Figure } from '../../../src/figures/figure.ts';
import { isPresent } from '../../../src/figures/figure.ts';
import { gaussian } from '../../statistics/noise.ts';
import { contextOf, every, logOf } from '../build.ts';

/** Free it would end at 88 °C; at `limit` it is held, with a saw of so many K and s. */
const heldAt = (limit: number, saw: number, period: number) => (t: number) =>
  Math.min(limit - (saw * (t % period)) / period, 88 - 64 * Math.exp(-t / 300));

function figuresOf(course: (t: number) => number, step: number, limit: number | null, load = 3600): ReadonlyMap<string, Figure> {
  const normal = gaussian(7);
  const values = (t: number) => Math.round((course(t) + 0.1 * normal()) / step) * step;
  const log = logOf(every(1, load), { soc: { quantity: 'temperature', values, step } });
  const throttleAt = limit === null ? {} : { soc: { value: limit, unit: '°C', parts: [] } };
  return derive(log, contextOf({ ambient: { value: 24, unit: '°C', parts: [] }, device: { id: 'larch', throttleAt } })).figures;
}

const whyOf = (figures: ReadonlyMap<string, Figure>, name: string): string => {
  const figure = figures.get(name)!;
  return isPresent(figure) ? 'present' : figure.why;
};

const GONE = ['time_constant', 'asymptote_temperature', 'ambient_ceiling', 'time_to_steady_state'];

describe('a temperature that stops climbing before its time', () => {
  test.each([
    ['flat', 0, 60],
    ['a saw of 1 K in 30 s', 1, 30],
    ['a saw of 2 K in 120 s', 2, 120],
  ])('held at its stated limit (%s): the governor held it, and no end and no ceiling are made of it', (_, saw, period) => {
    const figures = figuresOf(heldAt(80, saw, period), 0.1, 80);
    for (const name of GONE)
      expect(whyOf(figures, name)).toMatch(
        /^The channel soc stopped climbing at .* at the limit of 80 °C: the governor held it\.$/,
      );
    expect(isPresent(figures.get('steady_temperature')!)).toBe(true);
  });

  test('without a stated limit it stopped, and who stopped it is not said', () => {
    const figures = figuresOf(heldAt(80, 0, 60), 0.1, null);
    for (const name of GONE.filter((each) => each !== 'ambient_ceiling')) {
      expect(whyOf(figures, name)).toMatch(
        /it stopped, it did not settle\. A governor, a fan or a change of the load can do that, and this figure does not tell which\.$/,
      );
    }
  });

  test('on a sensor of 1 K, near its limit, it cannot be told', () => {
    const figures = figuresOf((t) => 80 - 56 * Math.exp(-t / 300), 1, 80);
    for (const name of GONE) expect(whyOf(figures, name)).toContain('cannot be told on a sensor with steps of 1 K');
  });

  test.each([
    ['one exponential', (t: number) => 62 - 38 * Math.exp(-t / 300)],
    ['a chip on a board', (t: number) => 62 - 12 * Math.exp(-t / 20) - 26 * Math.exp(-t / 600)],
    ['a slow tail', (t: number) => 64 - 35 * Math.exp(-t / 300) - 5 * Math.exp(-t / 7200)],
    ['three parts', (t: number) => 64 - 8 * Math.exp(-t / 15) - 25 * Math.exp(-t / 300) - 7 * Math.exp(-t / 2400)],
  ])('%s that settles did not stop', (_, course) => {
    for (const step of [0.1, 0.5, 1]) {
      const figures = figuresOf(course, step, 90);
      expect([step, whyOf(figures, 'time_constant')]).toEqual([step, expect.not.stringContaining('stopped')]);
      if (step === 0.1) expect(whyOf(figures, 'time_constant')).toBe('present');
    }
  });
});
