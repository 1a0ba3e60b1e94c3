import { describe, expect, test } from 'vitest';
import { rangeOf, sign, whisker } from '../../../src/plots/drawing/dots.ts';
import { inkOf } from '../../../src/plots/drawing/palette.ts';

describe('plots/drawing/dots', () => {
  test('an axis holds all values, the neutral one and the whiskers', () => {
    expect(rangeOf([{ value: 3, interval: [2.5, 3.5] }], 1)).toEqual([1, 3.5]);
    expect(rangeOf([{ value: 3, interval: null }], 5)).toEqual([3, 5]);
    expect(rangeOf([{ value: 1, interval: [0.9, 1.1] }], 1)).toEqual([0.9, 1.1]);
    expect(rangeOf([], 0)).toEqual([0, 0]);
  });

  test('one whisker among many that dwarfs the values does not stretch the axis', () => {
    const spreads = [1, 2, 3, 4].map((value) => ({ value, interval: [value - 0.1, value + 0.1] as const }));
    expect(rangeOf([...spreads, { value: 2, interval: [-100, 104] }], 1)).toEqual([-0.5, 5.5]);
  });

  test('nearly equal values with wide intervals keep their whiskers', () => {
    const spreads = [1, 1.001, 1.002].map((value) => ({ value, interval: [value - 0.05, value + 0.05] as const }));
    const [low, high] = rangeOf(spreads, 1);
    expect(low).toBeCloseTo(0.95, 9);
    expect(high).toBeCloseTo(1.052, 9);
  });

  test('a whisker has a stroke at each end; one that is cut has none there; an exact value has no whisker', () => {
    const whole = whisker([20, 60], 10, [0, 100], { k: 1 });
    expect(whole).toMatchObject([
      { x: 20, x2: 60, y: 10, y2: 10, stroke: inkOf(1) },
      { x: 20, x2: 20, y: 6, y2: 14 },
      { x: 60, x2: 60 },
    ]);
    expect(whisker([-20, 60], 10, [0, 100], { k: 1 })).toMatchObject([
      { x: 0, x2: 60 },
      { x: 60, x2: 60 },
    ]);
    expect(whisker([-20, 200], 10, [0, 100], { k: 1 })).toMatchObject([{ x: 0, x2: 100 }]);
    expect(whisker([30, 30], 10, [0, 100], { k: 1 })).toEqual([]);
    expect(whisker([120, 130], 10, [0, 100], { k: 1 })).toEqual([]);
  });

  test('an upright one is the same turned, from whichever end it is given', () => {
    expect(whisker([60, 20], 10, [0, 100], { k: 0, vertical: true })).toMatchObject([
      { x: 10, x2: 10, y: 20, y2: 60 },
      { y: 20, y2: 20, x: 6, x2: 14 },
      { y: 60, y2: 60 },
    ]);
  });

  test('a sign is filled with its ink or with paper', () => {
    expect(sign(1, 2, 0, true)).toEqual({ x: 1, y: 2, shape: 'circle', stroke: inkOf(0), fill: inkOf(0) });
    expect(sign(1, 2, 0, false).fill).toBe('var(--plot-paper)');
  });
});
