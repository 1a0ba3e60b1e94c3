import { describe, expect, test } from 'vitest';
import { type RiseProfile, riseProfile } from '../../src/statistics/rise-profile.ts';
import type { Ranged } from '../../src/statistics/rise-ranges.ts';
import { autoregressive, gaussian, stepped } from './noise.ts';

/** Middles of 120 equal spans of a load. */
function times(load: number): Float64Array {
  return Float64Array.from({ length: 120 }, (_, k) => ((k + 0.5) * load) / 120);
}

/** Means of a response with noise that follows itself over 10 s, as a sensor with this step gives it, a reading a second. */
function means(load: number, course: (t: number) => number, step: number, noise: number, seed: number): Float64Array {
  const normal = gaussian(seed);
  const random = autoregressive(load, Math.exp(-0.1), normal);
  const readings = stepped(
    Float64Array.from({ length: load }, (_, t) => course(t + 0.5) + noise * random[t]!),
    step,
  );
  const each = load / 120;
  return Float64Array.from(
    { length: 120 },
    (_, k) => readings.subarray(k * each, (k + 1) * each).reduce((a, b) => a + b, 0) / each,
  );
}

function profileOf(t: Float64Array, y: Float64Array, step: number): RiseProfile {
  const profile = riseProfile(t, y, { start: 0, step });
  if ('failed' in profile) throw new Error(profile.failed);
  return profile;
}

const holds = ({ low, high }: Ranged, truth: number) => low <= truth && truth <= high;

/** Closed forms: 35 K with 300 s, and a slower part. */
const response = (slow: number, constant: number) => (t: number) => 60 - 35 * Math.exp(-t / 300) - slow * Math.exp(-t / constant);

describe('profile of a step response (closed forms of exact exponentials)', () => {
  test('35 K with 300 s and 5 K with 7200 s, an hour on a sensor of 0.1 K: both constants and the end, which no single exponential finds', () => {
    const t = times(3600);
    const profile = profileOf(t, means(3600, response(5, 7200), 0.1, 0, 1), 0.1);
    expect(profile).toMatchObject({ two: true, open: false });
    expect(holds(profile.asymptote, 60)).toBe(true);
    expect(profile.asymptote.high - profile.asymptote.low).toBeLessThan(4);
    expect(holds(profile.terms[0]!.timeConstant, 300)).toBe(true);
    expect(holds(profile.terms[1]!.timeConstant, 7200)).toBe(true);
    expect(holds(profile.terms[1]!.amplitude, 5)).toBe(true);
  });

  test('exact readings give their own parameters', () => {
    const t = times(3600);
    const { best, two } = profileOf(t, t.map(response(5, 1200)), 0);
    expect(two).toBe(true);
    expect(best.asymptote).toBeCloseTo(60, 6);
    expect(best.terms[0]!.timeConstant).toBeCloseTo(300, 4);
    expect(best.terms[1]!.timeConstant).toBeCloseTo(1200, 3);
    const single = profileOf(t, t.map(response(0, 1)), 0);
    expect(single.two).toBe(false);
    expect(single.best.terms[0]!.timeConstant).toBeCloseTo(300, 6);
  });

  test('a fall is a rise turned over', () => {
    const t = times(3600);
    const y = means(3600, response(5, 1200), 0.1, 0.1, 3);
    const up = profileOf(t, y, 0.1);
    const down = profileOf(
      t,
      y.map((value) => -value),
      0.1,
    );
    expect(down.asymptote).toEqual({ value: -up.asymptote.value, low: -up.asymptote.high, high: -up.asymptote.low });
    expect(down.terms[1]!.timeConstant).toEqual(up.terms[1]!.timeConstant);
    expect(down.terms[1]!.amplitude.value).toBe(-up.terms[1]!.amplitude.value);
    expect(down.curves).toHaveLength(up.curves.length);
  });

  test('a slower part of which the load shows only a line: the end is that of parts up to thirty times slower, which holds the truth', () => {
    const t = times(1800);
    const profile = profileOf(t, means(1800, response(5, 7200), 0.1, 0.1, 5), 0.1);
    expect(profile).toMatchObject({ two: true, open: false, inverse: null });
    expect(profile.terms[1]!.timeConstant.low).toBeLessThan(7200);
    expect(profile.terms[1]!.timeConstant.high).toBe(Number.POSITIVE_INFINITY);
    expect(profile.terms[1]!.amplitude.high).toBe(Number.POSITIVE_INFINITY);
    const held = Array.from({ length: 40 }, (_, k) => profileOf(t, means(1800, response(5, 7200), 0.1, 0.1, k + 1), 0.1).asymptote);
    expect(held.filter((asymptote) => holds(asymptote, 60)).length).toBeGreaterThanOrEqual(35);
  });

  test('a slower part that is more than thirty times slower has no upper end, and its lower end is below the truth', () => {
    const t = times(1800);
    const course = (s: number) => 60 - 35 * Math.exp(-s / 40) - 5 * Math.exp(-s / 7200);
    const profile = profileOf(t, means(1800, course, 0.1, 0.1, 5), 0.1);
    expect(profile).toMatchObject({ two: true, open: true, asymptote: { high: Number.POSITIVE_INFINITY } });
    expect(profile.asymptote.low).toBeLessThan(60);
    expect(profile.asymptote.low).toBeGreaterThan(55);
    expect(profile.terms[1]!.timeConstant.low).toBeLessThan(7200);
  });

  test.each([
    ['no slower part', 0, 1200],
    ['2 K with 4 times the constant', 2, 1200],
    ['5 K with 8 times the constant', 5, 2400],
  ])('%s: the intervals hold', (_, slow, constant) => {
    const [t, runs] = [times(3600), 40];
    const held = { asymptote: 0, fast: 0, two: 0 };
    for (let seed = 1; seed <= runs; seed++) {
      const profile = profileOf(t, means(3600, response(slow, constant), 0.1, 0.1, seed), 0.1);
      if (holds(profile.asymptote, 60)) held.asymptote++;
      if (holds(profile.terms[0]!.timeConstant, 300)) held.fast++;
      if (profile.two) held.two++;
    }
    expect(held.asymptote).toBeGreaterThanOrEqual(35);
    expect(held.fast).toBeGreaterThanOrEqual(35);
    expect(held.two).toBe(slow > 0 ? runs : 0);
  });

  test('accepted curves end within the interval and pass through the readings', () => {
    const t = times(3600);
    const y = means(3600, response(5, 2400), 0.1, 0.1, 7);
    const { curves, asymptote } = profileOf(t, y, 0.1);
    expect(curves.length).toBeGreaterThan(4);
    for (const { asymptote: end, terms } of curves) {
      expect(end).toBeGreaterThan(asymptote.low - 1e-9);
      expect(end).toBeLessThan(asymptote.high + 1e-9);
      const at = (s: number) =>
        terms.reduce((sum, { amplitude, timeConstant }) => sum - amplitude * Math.exp(-s / timeConstant), end);
      expect(Math.abs(at(t[60]!) - y[60]!)).toBeLessThan(0.3);
    }
  });

  test('readings without a step, of one value, or too few have none', () => {
    const t = times(3600);
    const normal = gaussian(11);
    for (const y of [t.map(() => 40 + normal()), t.map(() => 40)]) expect(riseProfile(t, y)).toHaveProperty('failed');
    expect(riseProfile([0, 1, 2], [1, 2, 3])).toHaveProperty('failed');
    expect(() => riseProfile([0, 1], [1])).toThrow(RangeError);
  });
});
