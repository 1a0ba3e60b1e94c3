import { describe, expect, test } from 'vitest';
import { acrossResets } from '../../../src/figures/power/counter-resets.ts';

const counter = (rates: readonly number[], resetAt: number) => {
  const y = [100];
  for (const rate of rates) y.push(y.length === resetAt ? rate / 2 : y[y.length - 1]! + rate);
  return { t: Float64Array.from(y, (_, i) => i), y: Float64Array.from(y) };
};

describe('figures/power/counter-resets', () => {
  test('without a reset all is counted and nothing guessed', () => {
    expect(acrossResets(counter([1, 2, 3], 99))).toEqual({ counted: 6, resets: 0, guessed: null });
  });

  test('the step across a reset is the mean of those about it', () => {
    const { counted, resets, guessed } = acrossResets(counter(new Array(20).fill(8), 7));
    expect([counted, resets]).toEqual([19 * 8, 1]);
    expect(guessed).toMatchObject({ value: 8, u: 0 });
  });

  test('steps that differ make the guess uncertain', () => {
    const rates = Array.from({ length: 40 }, (_, i) => (i % 2 === 0 ? 4 : 6));
    const { guessed } = acrossResets(counter(rates, 9));
    // Each guess is off by 2: m is a third of the 35 steps whose neighbours were read.
    expect(guessed!.dof).toBe(11);
    expect(guessed!.u).toBeCloseTo(2 * Math.sqrt(1 + 1 / 11), 9);
  });

  test('too few steps tell nothing', () => {
    expect(acrossResets(counter([5, 5, 5, 5], 2)).guessed).toBeNull();
  });
});
