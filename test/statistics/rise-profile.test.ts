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

describe('profile of a step response: published values, and why there is none', () => {
  const instants = (rows: number, step: number) => Float64Array.from({ length: rows }, (_, i) => i * step);

  // Lumped capacitance, from published properties. Çengel, Heat Transfer, example 4-1 (printed 10 s to 99 %), as in a public Scilab
  // repository of worked examples; Incropera, Fundamentals of Heat and Mass Transfer, example 5.1 (printed 5.2 s; from memory).
  test.each([
    ['thermocouple bead of 1 mm', (8500 * 320 * (0.001 / 6)) / 210, 0.99, 9.94132],
    ['junction of 0.706 mm', (8500 * 400 * (7.05882e-4 / 6)) / 400, 174 / 175, 5.164786],
  ])('%s: time to most of the step', (_, timeConstant, share, expected) => {
    const t = instants(200, timeConstant / 20);
    const { best } = profileOf(
      t,
      t.map((at) => 200 - 175 * Math.exp(-at / timeConstant)),
      0,
    );
    expect(-best.terms[0]!.timeConstant * Math.log(1 - share)).toBeCloseTo(expected, 4);
  });

  test('falling readings, with the epoch as time', () => {
    const t = instants(300, 6);
    const y = t.map((at) => 24 + 38 * Math.exp(-at / 250));
    const profile = riseProfile(
      t.map((at) => at + 1_771_000_000),
      y,
    );
    if ('failed' in profile) throw new Error(profile.failed);
    expect(profile.best.asymptote).toBeCloseTo(24, 6);
    expect(profile.best.terms[0]!.amplitude).toBeCloseTo(-38, 6);
    expect(profile.best.terms[0]!.timeConstant).toBeCloseTo(250, 4);
  });

  test('of one exponential its curves reach over the interval of its time constant', () => {
    const t = times(3600);
    const { terms, curves, two } = profileOf(t, means(3600, response(0, 1), 0.5, 0.5, 3), 0.5);
    expect(two).toBe(false);
    const constants = curves.filter((curve) => curve.terms.length === 1).map((curve) => curve.terms[0]!.timeConstant);
    const { value, low, high } = terms[0]!.timeConstant;
    expect(Math.min(...constants)).toBeLessThan(value);
    expect(Math.max(...constants)).toBeGreaterThan(value);
    expect(Math.min(...constants)).toBeGreaterThanOrEqual(low);
    expect(Math.max(...constants)).toBeLessThanOrEqual(high);
  });

  test('why there is none', () => {
    const t = instants(600, 1);
    const noise = autoregressive(600, 0, gaussian(8));
    const why = (x: ArrayLike<number>, y: ArrayLike<number>) => (riseProfile(x, y) as { failed: string }).failed;
    expect(why([0, 1, 2, 3], [1, 2, 3, 4])).toBe('4 readings are too few, 7 are needed');
    expect(why(t, new Float64Array(600).fill(50))).toBe('all readings are the same, so that there is no step');
    expect(why(t, noise.with(5, Number.NaN))).toBe('reading 6 is not a finite number');
    expect(why(t.with(7, 0), noise)).toBe('the time of reading 8 is before that of the one ahead of it');
    expect(why(new Float64Array(600), noise)).toBe('all readings are of the same instant');
    expect(why(t, noise)).toMatch(/^(no step stands out from the scatter|no time constant fits the readings)$/);
    expect(() => riseProfile([1, 2], [1])).toThrow('t has 2 values and y has 1');
    expect(() => riseProfile(t, noise, { start: Number.NaN })).toThrow('start is NaN');
  });
});
