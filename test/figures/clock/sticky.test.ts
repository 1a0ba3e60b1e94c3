import { describe, expect, test } from 'vitest';
import { shownFigure } from '../../../src/compute/contents/figure-text.ts';
import { flagWarnings } from '../../../src/compute/steps/runs/flag-warnings.ts';
import { missedIn, type StickyEvent } from '../../../src/figures/clock/sticky.ts';
import { derive } from '../../../src/figures/derive.ts';
import { contextOf, every, logOf, phase, presentAt } from '../build.ts';

const PLACE = { file: 'content/setups/bench.md', line: 20, column: 3 };
const BITS = { bits: { '2': 'hot' }, sticky: { '18': 'hot' } };
const NOW = 4;
const SINCE_BOOT = 2 ** 18;

/** A log of 600 s, a reading every 2 s, loaded from 100 s on. */
function figuresOf(word: (t: number) => number, named: object = BITS, more: Parameters<typeof logOf>[1] = {}) {
  const log = logOf(every(2, 600), { flag: { quantity: 'throttle_flag', values: word, ...named }, ...more });
  const context = contextOf({
    phases: [phase('idle', 0, 100), phase('load', 100, 600)],
    setting: { clock: { value: 2e9, unit: 'Hz', parts: [] } },
  });
  return derive(log, context);
}

const declaration = (named: object) => ({
  file: 'invented.csv',
  channels: [{ name: 'flag', quantity: 'throttle_flag' as const, column: 'FLAG', place: PLACE, ...named }],
  repairs: [],
  place: PLACE,
});

describe('figures/clock/sticky', () => {
  test('a sticky bit beside its "now" bit is told of, and counts for nothing', () => {
    const derived = figuresOf((t) => (t >= 300 && t < 320 ? NOW : 0) + (t >= 300 ? SINCE_BOOT : 0));
    const events = presentAt(derived.figures, 'throttle_events');
    expect(events.quantity).toEqual({ value: 1, unit: '1', parts: [] });
    expect(events.interval).toBeUndefined();
    expect(events.of).toMatchObject({ sticky: 'the sticky bit 18 (hot) came on between 4.97 min and 5 min of the log' });
    expect(events.of).not.toHaveProperty('missed');
    expect(flagWarnings(derived, { channels: declaration(BITS).channels })).toEqual([]);
    expect(presentAt(derived.figures, 'time_to_throttle').quantity.value).toBe(200);
  });

  test('one that comes on without it: an event that no reading shows, warned of, and the count may be higher', () => {
    const derived = figuresOf((t) => (t >= 400 ? SINCE_BOOT : 0) + (t >= 500 && t < 510 ? NOW : 0));
    const events = presentAt(derived.figures, 'throttle_events');
    expect(events.quantity.value).toBe(1);
    expect(events.interval).toEqual([1, 2]);
    expect(events.of).toMatchObject({ missed: 1, sticky: expect.stringContaining('no reading shows it') });
    expect(shownFigure('throttle_events', events).detail).toMatch(/1 more, or more than that.*sticky bit 18 \(hot\) came on/);
    expect(flagWarnings(derived, { channels: declaration(BITS).channels })).toMatchObject([
      {
        severity: 'warning',
        rule: 'missed-throttling',
        place: PLACE,
        found: expect.stringMatching(/^1 throttle event under load/),
      },
    ]);
    // The sticky bit tells when it first throttled, though not that it was seen: within the two seconds before its reading.
    const time = presentAt(derived.figures, 'time_to_throttle');
    expect(time).toMatchObject({ quantity: { value: 300 }, interval: [298, 300], of: { by: 'a sticky bit that came on' } });
  });

  test('without any "now" reading it did throttle: the time is not absent', () => {
    const figures = figuresOf((t) => (t >= 400 ? SINCE_BOOT : 0)).figures;
    expect(presentAt(figures, 'throttle_events').interval).toEqual([0, 1]);
    expect(presentAt(figures, 'time_to_throttle').quantity.value).toBe(300);
  });

  test('set in the first reading: before the log, at a time unknown; and it went off: a restart', () => {
    const derived = figuresOf((t) => (t < 200 ? SINCE_BOOT : 0));
    const events = presentAt(derived.figures, 'throttle_events');
    expect(events.of?.sticky).toBe(
      'the sticky bit 18 (hot) was set in the first reading already: it happened after the boot and before the log, at a time unknown; ' +
        'the sticky bit 18 (hot) went off at 3.33 min of the log: the device was restarted, or its flags were cleared',
    );
    expect(events.interval).toBeUndefined();
    expect(derived.figures.get('time_to_throttle')).toMatchObject({ absent: 'not-throttled' });
    expect(flagWarnings(derived, { channels: declaration(BITS).channels })).toEqual([]);
  });

  test('one that came on before the load is no event of the load', () => {
    const events = presentAt(figuresOf((t) => (t >= 50 ? SINCE_BOOT : 0)).figures, 'throttle_events');
    expect(events.of).not.toHaveProperty('missed');
    expect(events.of?.sticky).toContain('between 48 s and 50 s');
  });

  test('another reason\'s "now" bit does not stand in for the one that is missing', () => {
    const named = { bits: { '2': 'hot', '0': 'supply too low' }, sticky: { '18': 'hot', '16': 'supply too low' } };
    const events = presentAt(figuresOf((t) => (t >= 400 ? 1 + 2 ** 16 + SINCE_BOOT : 0), named).figures, 'throttle_events');
    expect(events.of).toMatchObject({ missed: 1, reason: 'supply too low: 1, hot: 0' });
  });

  test('a "now" bit that was read just before counts, one from before the flags were cleared does not', () => {
    const before = presentAt(figuresOf((t) => (t === 398 ? NOW : t >= 400 ? SINCE_BOOT : 0)).figures, 'throttle_events');
    expect(before.of).not.toHaveProperty('missed');
    const cleared = (t: number) => (t >= 200 && t < 210 ? NOW : 0) + ((t >= 200 && t < 300) || t >= 400 ? SINCE_BOOT : 0);
    expect(presentAt(figuresOf(cleared).figures, 'throttle_events')).toMatchObject({
      quantity: { value: 1 },
      interval: [1, 2],
      of: { missed: 1 },
    });
  });

  test('a sticky bit whose reason no "now" bit has is held against all of them', () => {
    const named = { bits: BITS.bits, sticky: { '18': 'slowed' } };
    const seen = presentAt(figuresOf((t) => (t >= 400 ? NOW + SINCE_BOOT : 0), named).figures, 'throttle_events');
    expect(seen.of).not.toHaveProperty('missed');
    expect(presentAt(figuresOf((t) => (t >= 400 ? SINCE_BOOT : 0), named).figures, 'throttle_events').of).toMatchObject({
      missed: 1,
    });
  });

  test('what came on in the first reading after a phase, or before it, is none of its events', () => {
    const at = (row: number) =>
      ({ channel: 'flag', reason: 'hot', statement: '', missed: true, rose: { row, before: row - 1 } }) satisfies StickyEvent;
    const load = { fromRow: 50, toRow: 300 };
    expect(missedIn([at(49), at(50), at(299), at(300)], load)).toEqual([at(50), at(299)]);
  });

  test('sticky bits alone tell no count: the clock does, and without one the figure is absent with what is known', () => {
    const word = (t: number) => (t >= 400 ? SINCE_BOOT : 0);
    const only = { sticky: BITS.sticky };
    expect(figuresOf(word, only).figures.get('throttle_events')).toMatchObject({
      absent: 'no-channel',
      why: expect.stringMatching(/^All named bits of flag are sticky.*The sticky bit 18 \(hot\) came on between/),
    });
    const core = { quantity: 'clock' as const, values: (t: number) => (t >= 400 && t < 430 ? 1e9 : 2e9) };
    const events = presentAt(figuresOf(word, only, { core }).figures, 'throttle_events');
    expect(events).toMatchObject({ quantity: { value: 1 }, of: { clock: 'not stated' } });
    expect(events.from.columns).toEqual(['time', 'CORE', 'FLAG']);
  });

  test('readings that are missing are no change', () => {
    const word = (t: number) => (t >= 200 && t < 210 ? Number.NaN : t >= 204 ? SINCE_BOOT : 0);
    expect(presentAt(figuresOf(word).figures, 'throttle_events').of?.sticky).toContain('between 3.3 min and 3.5 min');
  });
});
