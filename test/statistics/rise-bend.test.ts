/** Bends of a rise: a fan that steps in has one, sums of exponentials have none. Closed forms with white noise. */
import { describe, expect, test } from 'vitest';
import { riseBend } from '../../src/statistics/rise-bend.ts';
import { random } from '../simulator/random.ts';

const ROWS = 120;
const SPAN = 2400;
const t = Float64Array.from({ length: ROWS }, (_, k) => (k + 0.5) * (SPAN / ROWS));

/** In how many of 20 a bend is told. */
function told(course: (at: number) => number, deviation = 0.03): number {
  let count = 0;
  for (let seed = 1; seed <= 20; seed++) {
    const chance = random(seed);
    if (
      riseBend(
        t,
        t.map((at) => course(at) + deviation * chance.normal()),
        0,
        0.1,
      )
    )
      count++;
  }
  return count;
}

/** A rise by 34 K with 260 s until `at`; from there with `share` of both. */
function stepsIn(at: number, share: number) {
  const level = 34 * (1 - Math.exp(-at / 260));
  return (time: number) =>
    time < at ? 34 * (1 - Math.exp(-time / 260)) : 34 * share + (level - 34 * share) * Math.exp(-(time - at) / (260 * share));
}

/** dT/dt = 40/300·(1 − (T/40)^1.25), by steps of a second. */
const STILL_AIR: number[] = [0];
for (let at = 0; at < SPAN; at++) STILL_AIR.push(STILL_AIR[at]! + (40 / 300) * (1 - (STILL_AIR[at]! / 40) ** 1.25));

describe('statistics/rise-bend', () => {
  test('the corner is found where it is, with the slopes beside it', () => {
    const bend = riseBend(t, t.map(stepsIn(290, 0.7)), 0, 0)!;
    expect(Math.abs(bend.at - 290)).toBeLessThanOrEqual(SPAN / ROWS);
    expect(bend.level).toBeCloseTo(34 * (1 - Math.exp(-290 / 260)), 0);
    // Slopes in closed form: (34·0.7 − level)/(0.7·260) over (34 − level)/260.
    const level = 34 * (1 - Math.exp(-290 / 260));
    expect(Math.abs(bend.slopes - (34 * 0.7 - level) / (34 - level) / 0.7)).toBeLessThan(0.2);
  });

  test('a fan that steps in is told in nine of ten', () => {
    for (const [at, share] of [
      [150, 0.7],
      [250, 0.75],
      [400, 0.7],
      [960, 0.7],
      [1440, 0.8],
      [1800, 0.7],
    ] as const)
      expect(told(stepsIn(at, share))).toBeGreaterThanOrEqual(18);
  });

  test.each<[string, (time: number) => number]>([
    ['one exponential', (at) => -40 * Math.exp(-at / 300)],
    ['two', (at) => -30 * Math.exp(-at / 300) - 10 * Math.exp(-at / 1500)],
    ['three', (at) => -6 * Math.exp(-at / 15) - 28 * Math.exp(-at / 300) - 8 * Math.exp(-at / 1500)],
    ['one with a line', (at) => -30 * Math.exp(-at / 200) + at / 400],
    ['a sensor that lags by 20 s', (at) => -(40 / 280) * (300 * Math.exp(-at / 300) - 20 * Math.exp(-at / 20))],
    ['still air, which cools better the hotter', (at) => STILL_AIR[Math.round(at)]!],
  ])('%s does not bend', (_, course) => {
    expect(told(course)).toBe(0);
    expect(told(course, 0.3)).toBe(0);
  });

  test('too few rows tell nothing', () => {
    expect(riseBend(t.subarray(0, 15), t.subarray(0, 15), 0, 0)).toBeNull();
  });
});
