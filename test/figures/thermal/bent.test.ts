/** A fan that steps in once, which nobody logged: figures of one step response are absent, and what was read stands. All invented. */
import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { random } from '../../simulator/random.ts';
import { contextOf, every, logOf, phase, presentAt } from '../build.ts';

/** The fan steps in above `from` °C, or after `after` s. */
function figuresOf(power: boolean, { from = 999, after = 9999, boost = 0 }) {
  const chance = random(7);
  const course: number[] = [];
  let [temperature, running] = [22, false];
  for (let t = 0; t < 3600; t++) {
    course.push(temperature);
    const heat = (34 / 260) * (t < boost ? 1.4 : 1);
    running ||= temperature > from || t > after;
    temperature += heat - (temperature - 22) / (running ? 0.7 * 260 : 260);
  }
  const log = logOf(every(1, 3599), {
    soc: { quantity: 'temperature', values: (t) => Math.round(10 * (course[t]! + 0.1 * chance.normal())) / 10, step: 0.1 },
    ...(power ? { board: { quantity: 'power' as const, values: () => 8, step: 0.01 } } : {}),
  });
  return derive(log, contextOf({ phases: [phase('load', 0, 3600)] })).figures;
}

describe('figures/thermal/bent', () => {
  test.each([true, false])('a fan that steps in late in the load: the reason names the bend; power logged: %s', (power) => {
    const figures = figuresOf(power, { after: 1500 });
    for (const name of ['time_constant', 'asymptote_temperature', 'response_amplitude'])
      expect(figures.get(name)).toMatchObject({
        absent: 'load-changed',
        why: expect.stringMatching(
          power
            ? /^The channel soc bent after about 2[45].* min of the load, .* A fan that steps in or a room that cools can do that/
            : /^The channel soc bent after about 2[45].* min of the load, .* A fan that steps in, a governor, a change of the load or a room that cools can/,
        ),
      });
    expect(presentAt(figures, 'steady_temperature').quantity.value).toBeCloseTo(22 + 0.7 * 34, 0);
    expect(presentAt(figures, 'peak_temperature').quantity.value).toBeGreaterThan(50);
  });

  test('early in a load that was seen to be constant it is told, too', () => {
    const why = expect.stringContaining('bent after about');
    expect(figuresOf(true, { from: 40 }).get('time_constant')).toMatchObject({ absent: 'load-changed', why });
  });

  test('where nobody saw the load, a bend in its first sixth may be the end of a boost, and the response after it is one', () => {
    const { interval } = presentAt(figuresOf(false, { boost: 120 }), 'time_constant');
    expect(interval![0]).toBeLessThan(260);
    expect(interval![1]).toBeGreaterThan(260);
  });
});
