/** Criteria of steady state on logs with holes: 62 − 40·exp(−t/300) °C, under load for an hour; truth in closed form. */
import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { contextOf, every, logOf, noise, phase, presentAt } from '../build.ts';

const TAU = 300;
const course = (t: number) => 62 - 40 * Math.exp(-t / TAU);
/** When the change over 15 min has fallen to 1 K. */
const TRUTH = TAU * Math.log(40 * (1 - Math.exp(-900 / TAU)));

/** Figures of the log without the rows from `from` on and before `to`. */
function without(from: number, to: number, steady?: string) {
  const kept = every(1, 3600).filter((t) => t < from || t >= to);
  const log = logOf(kept, { soc: { quantity: 'temperature', values: (t) => Math.round(course(t) * 10) / 10, step: 0.1 } });
  return derive(log, contextOf({ phases: [phase('load', 0, 3600)], ...(steady ? { steady } : {}) })).figures;
}

describe('a gap', () => {
  test.each([
    [290, 1210],
    [0, 2100],
    [200, 1000],
    [1300, 2500],
    [1000, 1090],
    [1050, 1150],
    [600, 2300],
    [3000, 3120],
  ])('from %d to %d s leaves the truth, 1091 s, inside the interval', (from, to) => {
    const { interval, quantity } = presentAt(without(from, to), 'time_to_steady_state');
    expect(interval![0]).toBeLessThan(TRUTH);
    expect(interval![1]).toBeGreaterThan(TRUTH);
    expect(quantity.value).toBeGreaterThanOrEqual(interval![0]);
    expect(quantity.value).toBeLessThanOrEqual(interval![1]);
  });

  test('over the moment in which it settled is not seen into by the fit: a device that nearly follows it settles anywhere in there', () => {
    const { interval, of } = presentAt(without(290, 1210), 'time_to_steady_state');
    expect(of).not.toHaveProperty('read_off');
    expect(interval![1] - interval![0]).toBeGreaterThan(600);
  });

  test('that hides a third of the last windows leaves the time to the fit, and the steady temperature stands', () => {
    const figures = without(3000, 3300);
    const { interval, of } = presentAt(figures, 'time_to_steady_state');
    expect(of).toMatchObject({ read_off: expect.stringContaining('fitted response') });
    expect(interval![0]).toBeLessThan(TRUTH);
    expect(interval![1]).toBeGreaterThan(TRUTH);
    expect(presentAt(figures, 'steady_temperature').of).toMatchObject({ gaps: expect.stringContaining('1 gap') });
  });

  test('that leaves less than half of the last window gives no steady temperature', () => {
    const figures = without(2500, 3590);
    expect(figures.get('steady_temperature')).toMatchObject({
      absent: 'no-readings',
      why: expect.stringMatching(
        /^Of the last 15 min of the load, over which a steady value would be averaged, soc was read for 1\.\d+ %\.$/,
      ),
    });
    expect(figures.get('time_to_steady_state')).toMatchObject({ absent: 'no-readings', bound: { relation: '>' } });
  });

  test.each([
    ['iec-60034-1', 1300, 1500],
    ['iec-61810-7', 700, 1600],
    ['within-2-percent', 1000, 1400],
  ])('under %s is not taken for calm', (steady, from, to) => {
    const whole = presentAt(without(0, 0, steady), 'time_to_steady_state');
    const holed = presentAt(without(from, to, steady), 'time_to_steady_state');
    expect(holed.interval![0]).toBeLessThanOrEqual(whole.quantity.value);
    expect(holed.interval![1]).toBeGreaterThanOrEqual(whole.quantity.value);
  });
});

test('a single missing reading is no gap', () => {
  const whole = presentAt(without(0, 0), 'time_to_steady_state');
  const { interval } = presentAt(without(1090, 1091), 'time_to_steady_state');
  expect(interval![1] - interval![0]).toBeLessThan(1.2 * (whole.interval![1] - whole.interval![0]));
});

test('rows that stand at one instant in tens tell an end of the load, and never throw', () => {
  const seconds = Float64Array.from({ length: 60 }, (_, row) => Math.floor(row / 10) * 10);
  const log = logOf(seconds, { soc: { quantity: 'temperature', values: (t) => 40 + t / 10 } });
  const { figures } = derive(log, contextOf({ phases: [phase('load', 0, 60)] }));
  expect(presentAt(figures, 'end_temperature').quantity.value).toBeCloseTo(42.5, 9);
});

test('a logger that changes its pace leaves no hole: from 15 min on it writes every 15 s, and nothing is missing', () => {
  const random = noise(7);
  const kept = [...every(1, 899), ...every(15, 4500).map((t) => t + 900)];
  const log = logOf(kept, { soc: { quantity: 'temperature', values: (t) => course(t) + 0.1 * random(), step: 0.1 } });
  const { figures } = derive(log, contextOf({ phases: [phase('load', 0, 5400)] }));
  const { interval } = presentAt(figures, 'time_to_steady_state');
  expect(interval![0]).toBeLessThan(TRUTH);
  expect(interval![1]).toBeGreaterThan(TRUTH);
  expect(presentAt(figures, 'steady_temperature').quantity.value).toBeCloseTo(62, 0);
});

// The course bends between two rows: between those of five minutes by 0.2 K.
test.each([15, 60, 120, 300])(
  'a logger that slows down to a row each %i s knows the time as well as those rows tell it',
  (slow) => {
    for (const step of [0.1, 0.001]) {
      const kept = [...every(1, 899), ...every(slow, 4500).map((t) => t + 900)];
      const log = logOf(kept, { soc: { quantity: 'temperature', values: (t) => Math.round(course(t) / step) * step, step } });
      const { interval } = presentAt(derive(log, contextOf({ phases: [phase('load', 0, 5410)] })).figures, 'time_to_steady_state');
      expect(interval![0]).toBeLessThan(TRUTH);
      expect(interval![1]).toBeGreaterThan(TRUTH);
      expect(interval![1] - interval![0]).toBeLessThan(130);
    }
  },
);

// A row a second for 15 min, then one each 5 min until 5400 s; the load ends between two of the slow rows.
test('a load that ends within a slow step of the logger has no hole at its end', () => {
  const kept = [...every(1, 899), ...every(300, 4500).map((t) => t + 900)];
  const log = logOf(kept, { soc: { quantity: 'temperature', values: (t) => Math.round(course(t) * 10) / 10, step: 0.1 } });
  const { figures } = derive(log, contextOf({ phases: [phase('load', 0, 5690)] }));
  const { interval } = presentAt(figures, 'time_to_steady_state');
  expect(interval![0]).toBeLessThan(TRUTH);
  expect(interval![1]).toBeGreaterThan(TRUTH);
  expect(interval![1] - interval![0]).toBeLessThan(130);
});
