import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { CRITERIA, CRITERION_NAMES } from '../../../src/figures/thermal/criteria.ts';
import { standardUncertainty } from '../../../src/quantities/uncertainty.ts';
import { quantise, wandering } from '../../simulator/noise.ts';
import { random } from '../../simulator/random.ts';
import { contextOf, every, logOf, noise, phase, presentAt, STEP, stepAt } from '../build.ts';

const { amplitude: A, timeConstant: TAU } = STEP;

/** Time to steady state of the exact step over a load of `hours`, by a named criterion. */
function timeBy(steady: string | undefined, hours = 3, step = 1): number {
  const log = logOf(every(step, hours * 3600), { soc: { quantity: 'temperature', values: stepAt } });
  const { figures } = derive(log, contextOf(steady === undefined ? {} : { steady }));
  return presentAt(figures, 'time_to_steady_state').quantity.value;
}

/** When τ ln(…) has the change over a window fall to its limit: closed form of T = T∞ − A exp(−t/τ). */
const opensAt = (most: number, window: number) => TAU * Math.log((A * (1 - Math.exp(-window / TAU))) / most);
/** A line over a window sees the slope in its middle larger by this factor (least squares over an exponential, closed form). */
const lineFactor = (half: number) => (3 * (half * Math.cosh(half) - Math.sinh(half))) / half ** 3;
const slopeAt = (perSecond: number, window: number) => TAU * Math.log((A / TAU / perSecond) * lineFactor(window / 2 / TAU));

describe('time to steady state of one exact exponential step, A = 40 K, τ = 600 s (closed forms; rules: the clauses named in criteria.ts)', () => {
  const cases: readonly (readonly [string, number])[] = [
    ['1-k-in-15-min', opensAt(1, 900)],
    ['iec-62368-1', opensAt(3, 1800)],
    ['iec-62368-1-below-limit', opensAt(1, 300)],
    ['iec-61010-1', opensAt(2, 3600)],
    ['bs-1363-1', opensAt(1, 3600)],
    ['mil-std-810', opensAt(2, 3600)],
    ['iec-60034-1', slopeAt(2 / 3600, 1800)],
    ['iec-60598-1', slopeAt(1 / 3600, 600)],
    ['iec-61810-7', opensAt(1, 600)],
    ['ul-1029', TAU * Math.log((A * (1 - Math.exp(-900 / TAU))) / 0.1)],
    ['within-3-k', TAU * Math.log(A / 3)],
    ['within-2-percent', TAU * Math.log(50)],
  ];
  test.each(cases)('%s at %d s', (name, expected) => {
    expect(Math.abs(timeBy(name) - expected)).toBeLessThan(2.5);
  });

  test('the closed forms give the times that checks by hand gave', () => {
    const rounded = [
      opensAt(1, 900),
      opensAt(3, 1800),
      opensAt(1, 300),
      opensAt(2, 3600),
      opensAt(1, 3600),
      TAU * Math.log(A / 3),
      TAU * Math.log(50),
    ];
    expect(rounded.map((time) => time.toFixed(6))).toEqual([
      '2061.838197',
      '1523.518791',
      '1653.676395',
      '1795.950267',
      '2211.838575',
      '1554.160299',
      '2347.213803',
    ]);
  });

  test('ul-507 spaces its readings by a tenth of the time elapsed', () => {
    const opens = timeBy('ul-507', 5);
    const spacing = Math.max(300, 0.1 * opens);
    const increase = stepAt(opens + spacing) - stepAt(opens);
    expect(increase).toBeLessThanOrEqual(0.1);
    expect(increase).toBeGreaterThan(0.099);
  });

  test('the default is at most 1 K in 15 min', () => {
    expect(timeBy(undefined)).toBe(timeBy('1-k-in-15-min'));
  });

  test('every criterion has a case here', () => {
    expect([...cases.map(([name]) => name), 'ul-507'].sort()).toEqual([...CRITERION_NAMES].sort());
  });

  test('coarser sampling moves the time by less than a step', () => {
    expect(Math.abs(timeBy(undefined, 3, 20) - opensAt(1, 900))).toBeLessThan(30);
  });
});

describe('time to steady state', () => {
  test('its interval covers the truth under noise, and grows with it', () => {
    const timed = (size: number, seed: number) => {
      const random = noise(seed);
      const log = logOf(every(1, 7200), { soc: { quantity: 'temperature', values: (t) => stepAt(t) + size * random() } });
      const { quantity } = presentAt(derive(log, contextOf()).figures, 'time_to_steady_state');
      return { value: quantity.value, u: standardUncertainty(quantity)! };
    };
    const loud = Array.from({ length: 20 }, (_, seed) => timed(2, seed + 1));
    const covered = loud.filter(({ value, u }) => Math.abs(value - opensAt(1, 900)) < 3 * u).length;
    expect(covered).toBeGreaterThanOrEqual(17);
    expect(loud[0]!.u).toBeGreaterThan(2 * timed(0.2, 1).u);
  });

  test('a log that never settles is not steady, with the time as a bound', () => {
    const log = logOf(every(1, 3600), { soc: { quantity: 'temperature', values: (t) => 30 + t / 300 } });
    const { figures } = derive(log, contextOf());
    expect(figures.get('time_to_steady_state')).toMatchObject({
      absent: 'not-steady',
      bound: { relation: '>', value: 2700, unit: 's' },
    });
    expect(figures.get('steady_temperature')).toMatchObject({ absent: 'not-steady', bound: { relation: '>', unit: '°C' } });
    const why = (figures.get('steady_temperature') as { why: string }).why;
    expect(why).toMatch(
      /^Not steady within 60 min: the smoothed rise over ambient changes by at most 1 K in 15 min; at the end it was (3|2\.\d+) K, and 1 K would have done\.$/,
    );
  });

  test('a temperature that came to rest and then climbs again is not steady', () => {
    const log = logOf(every(1, 7200), { soc: { quantity: 'temperature', values: (t) => stepAt(t) + Math.max(0, t - 6000) / 100 } });
    expect(derive(log, contextOf()).figures.get('time_to_steady_state')).toMatchObject({ absent: 'not-steady' });
  });

  // Loads of four time constants, τ = 450 s: the course climbs by 4.7 K over the last 15 min. The range of what was smoothed hides it in these seeds.
  test.each([1000, 1016, 1021])('loud noise that lasts does not hide that a course still climbs, seed %d', (seed) => {
    const chance = random(seed);
    const start = 22 + chance.uniform();
    const wander = wandering(chance, 1, 30, 2);
    const values = (t: number) => quantise(start + 40 * (1 - Math.exp(-t / 450)) + wander(), 1);
    const log = logOf(every(2, 1798), { soc: { quantity: 'temperature', values, step: 1 } });
    const { figures } = derive(log, contextOf({ phases: [phase('load', 0, 1800)] }));
    expect(figures.get('steady_temperature')).toMatchObject({
      absent: 'undecided',
      why: expect.stringMatching(
        / Noise hides whether that held at the end; a line through the last 15 min climbs by [23]\.?\d* K\.$/,
      ),
    });
  });

  test('a falling temperature gets no bound from below', () => {
    const log = logOf(every(1, 3600), { soc: { quantity: 'temperature', values: (t) => 90 - t / 200 } });
    expect(derive(log, contextOf()).figures.get('steady_temperature')).not.toHaveProperty('bound');
  });

  test('a load shorter than the window says how long it would have needed, and that it still climbs', () => {
    const log = logOf(every(1, 600), { soc: { quantity: 'temperature', values: stepAt } });
    const { figures } = derive(log, contextOf());
    expect(figures.get('steady_temperature')).toMatchObject({
      absent: 'too-short',
      bound: { relation: '>', unit: '°C' },
      of: { needed_s: 900 },
    });
    expect(figures.get('time_to_steady_state')).toMatchObject({ absent: 'too-short', of: { needed_s: 900 } });
    expect(figures.get('time_to_steady_state')).not.toHaveProperty('bound');
  });

  test('"within" is refused for a load of less than four time constants', () => {
    const log = logOf(every(1, 2000), { soc: { quantity: 'temperature', values: stepAt } });
    const figure = derive(log, contextOf({ steady: 'within-2-percent' })).figures.get('time_to_steady_state');
    expect(figure).toMatchObject({ absent: 'too-short' });
    expect((figure as { why: string }).why).toContain('less than four time constants (40 min)');
  });

  test('an unknown criterion names those that there are', () => {
    const log = logOf(every(1, 2000), { soc: { quantity: 'temperature', values: stepAt } });
    const figure = derive(log, contextOf({ steady: 'warm-enough' })).figures.get('steady_temperature') as {
      absent: string;
      why: string;
    };
    expect(figure.absent).toBe('no-condition');
    for (const { name } of CRITERIA) expect(figure.why).toContain(name);
  });

  test('a room that warms along is taken off where it is measured', () => {
    const warming = (t: number) => 22 + t / 900;
    const log = logOf(every(1, 7200), {
      soc: { quantity: 'temperature', values: (t) => stepAt(t) - 22 + warming(t) },
      room: { quantity: 'ambient', values: warming },
    });
    expect(
      Math.abs(presentAt(derive(log, contextOf()).figures, 'time_to_steady_state').quantity.value - opensAt(1, 900)),
    ).toBeLessThan(2.5);
  });

  test('a device that was steady from the beginning took no time', () => {
    const log = logOf(every(1, 3600), { soc: { quantity: 'temperature', values: () => 40 } });
    expect(presentAt(derive(log, contextOf()).figures, 'time_to_steady_state').quantity.value).toBe(0);
  });
});
