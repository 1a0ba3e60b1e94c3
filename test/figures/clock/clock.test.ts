import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { standardUncertainty } from '../../../src/quantities/uncertainty.ts';
import { apart, type ChannelSketch, contextOf, every, logOf, phase, presentAt } from '../build.ts';

const GHZ = 1e9;
const setting = { clock: { value: 2.6 * GHZ, unit: 'Hz', parts: [] } };
const PHASES = [phase('idle', 0, 100), phase('load', 100, 2000)];

/** Figures of a log with a step of 1 s, idle to 100 s and loaded to 2000 s. */
function figuresOf(channels: Readonly<Record<string, ChannelSketch>>, more = {}) {
  return derive(logOf(every(1, 2000), channels), contextOf({ setting, phases: PHASES, ...more })).figures;
}

const clock = (values: (t: number) => number): Readonly<Record<string, ChannelSketch>> => ({
  core: { quantity: 'clock', values, shows: 'delivered' },
});
const dips = (t: number) => (t < 100 ? 0.6 : (t >= 500 && t < 560) || (t >= 1500 && t < 1530) ? 2.0 : t === 900 ? 2.1 : 2.6) * GHZ;

describe('clock', () => {
  test('means by phase, the load under the bare name', () => {
    const figures = figuresOf(clock((t) => (t < 100 ? 0.6 : 2.6) * GHZ));
    expect(apart(presentAt(figures, 'mean_clock').quantity.value, 2.6 * GHZ)).toBeLessThan(1e-12);
    expect(apart(presentAt(figures, 'mean_clock.idle').quantity.value, 0.6 * GHZ)).toBeLessThan(1e-12);
    expect(presentAt(figures, 'mean_clock').quantity.repeatabilityOnly).toBeUndefined();
  });

  test('lowest clock is the smallest reading under load', () => {
    const lowest = presentAt(figuresOf(clock(dips)), 'lowest_clock');
    expect(lowest.quantity.value).toBe(2.0 * GHZ);
    expect(lowest.quantity.value - lowest.interval![0]).toBeGreaterThan(lowest.interval![1] - lowest.quantity.value);
  });

  test('time below the setting counts loaded rows alone', () => {
    const below = presentAt(figuresOf(clock(dips)), 'time_below_setting');
    expect(below.quantity).toMatchObject({ value: 60 + 30 + 1, unit: 's' });
    // Six changes of state, each known to a step/√12.
    expect(apart(standardUncertainty(below.quantity)!, Math.sqrt(6 / 12))).toBeLessThan(1e-12);
    const idling = { busy: { quantity: 'utilisation', values: (t: number) => (t >= 500 && t < 560 ? 0.1 : 1) } } as const;
    expect(presentAt(figuresOf({ ...clock(dips), ...idling }), 'time_below_setting').quantity.value).toBe(30 + 1);
  });

  // By hand: 19 dips whose edges all fall alike between two readings, a step/√12 for all begins and one for all ends.
  test('changes of state that recur in step with the log share their error', () => {
    const recurring = (every: (dip: number) => number) =>
      presentAt(figuresOf(clock((t) => (t < 100 ? 0.6 : every(t) < 10 ? 2.0 : 2.6) * GHZ)), 'time_below_setting').quantity;
    expect(apart(standardUncertainty(recurring((t) => (t + 50) % 100))!, (19 * Math.SQRT2) / Math.sqrt(12))).toBeLessThan(1e-12);
    expect(standardUncertainty(recurring((t) => (t + 50) % 100.5))!).toBeLessThan(3);
  });

  test('one step of the clock, or 1 %, is not below', () => {
    const at = (ghz: number, step: number | null) =>
      presentAt(figuresOf({ core: { quantity: 'clock', values: () => ghz * GHZ, step } }), 'time_below_setting').quantity.value;
    expect(at(2.58, null)).toBe(0);
    expect(at(2.57, null)).toBe(1900);
    expect(at(2.5, 0.1 * GHZ)).toBe(0);
    expect(at(2.4, 0.1 * GHZ)).toBe(1900);
  });
});

describe('throttling', () => {
  test('by the clock itself: two readings or more below the setting, once it was there', () => {
    const figures = figuresOf(clock(dips));
    expect(presentAt(figures, 'throttle_events').quantity).toEqual({ value: 2, unit: '1', parts: [] });
    expect(presentAt(figures, 'time_to_throttle').quantity.value).toBe(400);
    expect(presentAt(figures, 'throttle_events').of!.by).toMatch(/the clock core itself/);
  });

  test('a single low reading may have been a fall, the last of the load too: the count may be higher by each, and by what no reading caught', () => {
    const [once] = [presentAt(figuresOf(clock(dips)), 'throttle_events')];
    expect(once).toMatchObject({ quantity: { value: 2 }, interval: [2, 6] });
    const last = presentAt(figuresOf(clock((t) => (t < 100 ? 0.6 : t >= 2000 ? 2.0 : 2.6) * GHZ)), 'throttle_events');
    expect(last).toMatchObject({ quantity: { value: 0 }, interval: [0, 4] });
    const lone = figuresOf(clock((t) => (t < 100 ? 0.6 : t === 300 || t >= 1000 ? 2.0 : 2.6) * GHZ));
    expect(presentAt(lone, 'time_to_throttle')).toMatchObject({ quantity: { value: 900 }, interval: [199, 900] });
    const none = figuresOf(clock((t) => (t < 100 ? 0.6 : t === 300 ? 2.0 : 2.6) * GHZ)).get('time_to_throttle');
    expect(none).toMatchObject({
      absent: 'not-throttled',
      bound: { relation: '>', value: 199, unit: 's' },
      why: expect.stringMatching(/A single reading was below the setting 3\.33 min after it began, which may have been a fall\.$/),
    });
  });

  test('a single reading at the setting within a fall may have made two of it', () => {
    const split = figuresOf(clock((t) => (t < 100 ? 0.6 : t >= 400 && t < 600 && t !== 500 ? 2.0 : 2.6) * GHZ));
    expect(presentAt(split, 'throttle_events')).toMatchObject({ quantity: { value: 1 }, interval: [1, 5] });
  });

  test('a few low readings in a long load leave the count', () => {
    const rare = figuresOf(clock((t) => (t < 100 ? 0.6 : t % 400 === 0 ? 2.0 : 2.6) * GHZ));
    expect(presentAt(rare, 'throttle_events')).toMatchObject({ quantity: { value: 0 }, interval: [0, 12] });
  });

  test('a clock that changes as fast as it was logged has no count', () => {
    const quick = figuresOf(clock((t) => (t % 5 === 0 || t % 100 < 2 ? 2.0 : 2.6) * GHZ));
    expect(quick.get('throttle_events')).toMatchObject({
      absent: 'not-observed',
      why: expect.stringMatching(/as fast as it was logged/),
    });
  });

  test('a clock that never reached its setting shows neither throttling nor that there was none', () => {
    const figures = figuresOf(clock(() => 2 * GHZ));
    for (const name of ['throttle_events', 'time_to_throttle'] as const)
      expect(figures.get(name)).toMatchObject({
        absent: 'not-observed',
        why: expect.stringMatching(/below its setting of 2\.6\sGHz from the first/),
      });
  });

  test('a delivered clock that was below its setting from the start is one event at the start; a ramp of seconds is none', () => {
    const from = (up: number) => figuresOf(clock((t) => (t < 100 + up ? 2 : 2.6) * GHZ));
    expect(presentAt(from(300), 'throttle_events')).toMatchObject({
      quantity: { value: 1 },
      of: { reason: 'clock below its setting from the start: 1' },
    });
    expect(presentAt(from(300), 'time_to_throttle').quantity.value).toBe(0);
    expect(presentAt(from(8), 'throttle_events').quantity.value).toBe(0);
  });

  // The threshold is 2.574 GHz: 1 % below 2.6 GHz.
  test('a clock that toggles by 2 MHz about the threshold falls once, one that comes up by the tolerance each time', () => {
    const toggling = (by: number) => clock((t) => (t < 150 ? 2.6 * GHZ : 2.574 * GHZ + (t % 4 < 2 ? -by : by)));
    expect(presentAt(figuresOf(toggling(1e6)), 'throttle_events').quantity.value).toBe(1);
    expect(presentAt(figuresOf(toggling(20e6)), 'throttle_events').quantity.value).toBeGreaterThan(400);
  });

  test('a clock that was requested, or of which nobody says, shows no throttling by staying up; one that falls does', () => {
    for (const shows of ['requested', undefined] as const) {
      const as = (values: (t: number) => number) => figuresOf({ core: { quantity: 'clock', values, ...(shows ? { shows } : {}) } });
      const steady = as(() => 2.6 * GHZ);
      expect(steady.get('throttle_events')).toMatchObject({ absent: 'not-observed' });
      expect(steady.get('time_to_throttle')).toMatchObject({ absent: 'not-observed' });
      expect(presentAt(as(dips), 'throttle_events').quantity.value).toBe(2);
    }
  });

  test('of a requested and a delivered clock the delivered one tells', () => {
    const asked: ChannelSketch = { quantity: 'clock', values: () => 2.6 * GHZ, shows: 'requested' };
    expect(presentAt(figuresOf({ asked, ...clock(dips) }), 'throttle_events').quantity.value).toBe(2);
  });

  const flags = (values: (t: number) => number, bits?: Readonly<Record<string, string>>) =>
    ({ flags: { quantity: 'throttle_flag', values, ...(bits ? { bits } : {}) } }) as const;

  test('by flags: rising bits under load, by reason; other bits of the word do not count', () => {
    const word = (t: number) =>
      (t < 50 ? 1 : 0) +
      (t >= 300 && t < 320 ? 1 : 0) +
      (t >= 310 && t < 330 ? 4 : 0) +
      (t >= 700 ? 4 : 0) +
      (t > 300 ? 2 ** 16 : 0);
    const figures = figuresOf(flags(word, { '0': 'supply too low', '2': 'too hot' }));
    expect(presentAt(figures, 'throttle_events')).toMatchObject({
      quantity: { value: 3 },
      of: { by: 'rising bits of the throttle flags', reason: 'supply too low: 1, too hot: 2' },
    });
    expect(presentAt(figures, 'time_to_throttle')).toMatchObject({ quantity: { value: 200 }, of: { reason: 'supply too low' } });
  });

  test('bits above the 31st are read too', () => {
    expect(presentAt(figuresOf(flags((t) => (t > 500 ? 2 ** 40 : 0), { '40': 'too hot' })), 'throttle_events').quantity.value).toBe(
      1,
    );
  });

  test('a flag without named bits says "throttled" when it is not zero, and is preferred to the clock', () => {
    const figures = figuresOf({ ...clock(dips), ...flags((t) => (t >= 1000 && t < 1001 ? 1 : 0)) });
    expect(presentAt(figures, 'throttle_events')).toMatchObject({ quantity: { value: 1 }, of: { reason: 'throttled: 1' } });
  });

  test('a flag that was set before the load began is no event of the load', () => {
    expect(presentAt(figuresOf(flags((t) => (t > 50 ? 1 : 0))), 'throttle_events').quantity.value).toBe(0);
  });

  test('without throttling the time is above the length of the load', () => {
    expect(figuresOf(clock(() => 2.6 * GHZ)).get('time_to_throttle')).toMatchObject({
      absent: 'not-throttled',
      bound: { relation: '>', value: 1900, unit: 's' },
    });
  });
});

describe('sustained ratio', () => {
  test('last ten minutes over first two', () => {
    const figures = figuresOf(clock((t) => (t < 1000 ? 2.6 : 1.95) * GHZ));
    expect(apart(presentAt(figures, 'sustained_ratio').quantity.value, 0.75)).toBeLessThan(1e-12);
    expect(presentAt(figures, 'sustained_ratio').quantity.unit).toBe('1');
  });

  test('a load of less than twenty minutes is too short', () => {
    const log = logOf(
      every(1, 600),
      clock(() => 2.6 * GHZ),
    );
    expect(derive(log, contextOf()).figures.get('sustained_ratio')).toMatchObject({
      absent: 'too-short',
      bound: { value: 1200, unit: 's' },
    });
  });
});
