import { describe, expect, test } from 'vitest';
import { fromState, random } from './random.ts';

describe('simulator/random', () => {
  // The authors' C code from state 1, 2, 3, 4, as the test `reference` of the public crate rand_xoshiro prints it.
  test('gives the published sequence of xoshiro128**', () => {
    const { bits } = fromState([1, 2, 3, 4]);
    const found = Array.from({ length: 10 }, bits);
    expect(found).toEqual([11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804]);
  });

  test('equal seeds give equal numbers, other seeds others', () => {
    const take = (seed: number) => Array.from({ length: 5 }, random(seed).uniform);
    expect(take(7)).toEqual(take(7));
    expect(take(7)).not.toEqual(take(8));
  });

  test('uniform numbers have mean 1/2 and variance 1/12, within(a) stays within ±a', () => {
    const { uniform, within } = random(11);
    const values = Array.from({ length: 40_000 }, uniform);
    const mean = values.reduce((a, b) => a + b) / values.length;
    const variance = values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / values.length;
    expect(Math.abs(mean - 0.5)).toBeLessThan(4 / Math.sqrt(12 * values.length));
    expect(Math.abs(variance * 12 - 1)).toBeLessThan(0.02);
    expect(Array.from({ length: 1000 }, () => Math.abs(within(0.25))).every((x) => x <= 0.25)).toBe(true);
  });

  // Shares within 1, 2 and 3 standard deviations: 68.27, 95.45, 99.73 % (the levels of JCGM 100:2008, Table G.2).
  test('normal numbers have the shares of a normal distribution', () => {
    const { normal } = random(12);
    const values = Array.from({ length: 40_000 }, normal);
    const share = (k: number) => values.filter((x) => Math.abs(x) <= k).length / values.length;
    expect(Math.abs(share(1) - 0.6827)).toBeLessThan(0.01);
    expect(Math.abs(share(2) - 0.9545)).toBeLessThan(0.005);
    expect(Math.abs(share(3) - 0.9973)).toBeLessThan(0.0015);
  });
});
