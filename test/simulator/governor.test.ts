import { describe, expect, test } from 'vitest';
import { atEase, type GovernorOptions, govern } from './governor.ts';

const OPTIONS: GovernorOptions = { limit: 84, hysteresis: 2, step: 1e8, lowest: 6e8, patience: 12 };
const ASKED = 2.6e9;

describe('simulator/governor', () => {
  test('below the limit it gives the clock asked for', () => {
    const state = govern(OPTIONS, atEase(6e8), 40, ASKED, 0);
    expect(state).toMatchObject({ clock: ASKED, throttled: false });
  });

  test('at the limit it goes down by a step, and again, never below the lowest', () => {
    let state = atEase(ASKED);
    const clocks = Array.from({ length: 25 }, (_, k) => {
      state = govern(OPTIONS, state, 84, ASKED, k);
      return state.clock;
    });
    expect(clocks.slice(0, 2)).toEqual([2.5e9, 2.4e9]);
    expect(clocks.at(-1)).toBe(6e8);
    expect(state.throttled).toBe(true);
  });

  test('between limit and hysteresis it holds', () => {
    const down = govern(OPTIONS, atEase(ASKED), 84, ASKED, 0);
    expect(govern(OPTIONS, down, 82.5, ASKED, 100).clock).toBe(2.5e9);
  });

  test('below the hysteresis it goes up, but not before its patience', () => {
    const down = govern(OPTIONS, atEase(ASKED), 84, ASKED, 0);
    expect(govern(OPTIONS, down, 81, ASKED, 11).clock).toBe(2.5e9);
    expect(govern(OPTIONS, down, 81, ASKED, 12)).toMatchObject({ clock: ASKED, throttled: false });
  });

  test('a lower wish counts at once, also while throttled', () => {
    const down = govern(OPTIONS, atEase(ASKED), 84, ASKED, 0);
    expect(govern(OPTIONS, down, 83, 6e8, 1).clock).toBe(6e8);
  });
});
