import { describe, expect, test } from 'vitest';
import { extremeValue } from '../../src/figures/extreme-value.ts';
import { readingsOf } from '../../src/figures/readings.ts';
import { scatterOf } from '../../src/figures/scatter.ts';
import { apart, every, logOf, noise } from './build.ts';

/** Normal deviates with standard deviation 1, as sums of twelve uniform ones (common practice, no source). */
function normal(n: number, seed: number): Float64Array {
  const random = noise(seed);
  return Float64Array.from({ length: n }, () => Array.from({ length: 12 }, random).reduce((sum, value) => sum + value, 0));
}

/** Logged once a second. */
function readings(y: Float64Array) {
  const log = logOf(every(1, y.length - 1), { draw: { quantity: 'power', values: y } });
  return readingsOf(log, log.channels[0]!.values, { from: 0, to: log.rows });
}

describe('scatter of single readings', () => {
  test('of independent noise is its standard deviation', () => {
    expect(apart(scatterOf(normal(20_000, 1)).deviation, 1)).toBeLessThan(0.03);
  });

  test('does not count a straight course', () => {
    const line = Float64Array.from({ length: 1000 }, (_, i) => 5 * i);
    expect(scatterOf(line)).toEqual({ deviation: 0, largest: 5 });
    const noisy = normal(20_000, 2).map((value, i) => value + i);
    expect(apart(scatterOf(noisy).deviation, 1)).toBeLessThan(0.03);
  });

  test('by hand: 0 3 0 has a second difference of −6, so 6/√6', () => {
    expect(apart(scatterOf(Float64Array.of(0, 3, 0)).deviation, Math.sqrt(6))).toBeLessThan(1e-12);
  });

  test('of one or two readings is not told', () => {
    expect(scatterOf(Float64Array.of(1, 4))).toEqual({ deviation: 0, largest: 3 });
    expect(scatterOf(Float64Array.of(1))).toEqual({ deviation: 0, largest: 0 });
  });
});

describe('extremes', () => {
  test('noise lifts the largest of many readings by about what is allowed for', () => {
    for (const seed of [3, 4, 5, 6]) {
      const { value, lifted } = extremeValue(readings(normal(2000, seed)), 'highest', 0);
      expect(value).toBeGreaterThan(2);
      expect(value - lifted).toBeLessThan(1.96);
      expect(lifted).toBeLessThan(4.1);
    }
  });

  test('a lone spike competes with nobody', () => {
    const y = new Float64Array(1000).fill(10);
    y[500] = 40;
    expect(extremeValue(readings(y), 'highest', 0)).toMatchObject({ value: 40, lifted: 0, beyond: 15 });
  });

  test('the step of the sensor is the least uncertainty', () => {
    expect(extremeValue(readings(new Float64Array(10).fill(50)), 'lowest', 0.5)).toMatchObject({
      value: 50,
      u: 0.5 / Math.sqrt(12),
      dof: null,
    });
  });
});

/** Rows of a load whose level is `level`, as the instrument shows it. */
interface Instrument {
  readonly step: number;
  readonly noise: number;
  /** Seconds that a reading is held for. */
  readonly refresh: number;
}

function shown(level: number, { step, noise: deviation, refresh }: Instrument, seed: number): Float64Array {
  const each = normal(2400, seed);
  return each.map((_, row) => step * Math.round((level + deviation * each[Math.floor(row / refresh)]!) / step));
}

describe('extremes of a level that is known', () => {
  const LEVELS = 40;
  /** Of levels spread over a step: how many lie in the interval, and the room that it leaves for lifting on average, in steps. */
  function count(instrument: Instrument, side: 'highest' | 'lowest') {
    let held = 0;
    let room = 0;
    for (let k = 0; k < LEVELS; k++) {
      const level = 8 + (instrument.step * k) / LEVELS;
      const { value, u, beyond, lifted } = extremeValue(readings(shown(level, instrument, 100 + k)), side, instrument.step);
      const away = side === 'highest' ? value - level : level - value;
      if (away <= 1.96 * u + lifted && away >= -1.96 * u - beyond) held++;
      room += lifted / instrument.step / LEVELS;
    }
    return { held, room };
  }

  test.each([
    ['refreshed every 5 s', { step: 0.01, noise: 0.1, refresh: 5 }],
    ['refreshed every 15 s', { step: 0.01, noise: 0.1, refresh: 15 }],
    ['refreshed every 7.5 s', { step: 0.01, noise: 0.1, refresh: 7.5 }],
    ['with a step ten times its noise', { step: 1, noise: 0.1, refresh: 1 }],
    ['with a step five times its noise', { step: 0.1, noise: 0.02, refresh: 1 }],
    ['with a step three times its noise', { step: 0.3, noise: 0.1, refresh: 1 }],
    ['with a step as large as its noise', { step: 0.1, noise: 0.1, refresh: 1 }],
  ])('an instrument %s: the interval holds 38 of 40 levels or more, on both sides', (_, instrument) => {
    expect(count(instrument, 'highest').held).toBeGreaterThanOrEqual(38);
    expect(count(instrument, 'lowest').held).toBeGreaterThanOrEqual(38);
  });

  test('a quiet sensor that shows one step alone takes no room for noise', () => {
    const level = extremeValue(readings(shown(8.2, { step: 1, noise: 0.01, refresh: 1 }, 1)), 'highest', 1);
    expect(level.lifted).toBe(0);
  });

  test('a highest step that was read once leaves room for half a step; one that was read mostly leaves what was seen of the noise', () => {
    const y = new Float64Array(1000).fill(62);
    y[500] = 63;
    // z(1 − 1/1000) beside z(1 − 3/1000).
    expect(apart(extremeValue(readings(y), 'highest', 1).lifted, 3.0902 / (3.0902 + 2.7478))).toBeLessThan(1e-4);
    y.fill(63, 100);
    // One change of a step is a scatter of √(2/(6 × 998)) steps, about 900 equal readings.
    const scatter = Math.sqrt(2 / (6 * 998));
    expect(apart(extremeValue(readings(y), 'highest', 1).lifted, scatter * Math.sqrt(2 * Math.log(900)))).toBeLessThan(1e-9);
  });
});
