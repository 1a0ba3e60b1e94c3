import { describe, expect, test } from 'vitest';
import type { SaidNumber } from '../../../src/words/stated/phrase.ts';
import { precisionOf, roundStep } from '../../../src/words/stated/precision.ts';
import { readStated } from '../../../src/words/stated/read.ts';

const digits = (value: number, place: number): SaidNumber =>
  ({ amount: { value, place, style: 'digits' }, mixed: false }) as unknown as SaidNumber;

describe('words/stated/precision', () => {
  test.each([
    [60, 0, { half: 0.5, near: 2.5, about: 2.5 }],
    [1200, 0, { half: 0.5, near: 25, about: 25 }],
    [65, 0, { half: 0.5, near: 2.5, about: 2.5 }],
    [61, 0, { half: 0.5, near: 0.5, about: 1 }],
    [3, 0, { half: 0.5, near: 0.5, about: 0.6 }],
    [3.25, -2, { half: 0.005, near: 0.005, about: 0.01 }],
    [50.5, -1, { half: 0.05, near: 0.05, about: 0.1 }],
    [0, 0, { half: 0.5, near: 0.5, about: 0.5 }],
  ])(
    '%d said to the place %d reaches half of its last digit, and a round one half of its step when it is hedged',
    (value, place, expected) => {
      expect(precisionOf(digits(value, place))).toMatchObject({ nominal: value, ...expected });
    },
  );

  test('hours, days and times are said in halves below ten, and from ten on not', () => {
    const widthOf = (text: string) => {
      const stated = readStated(text) as { lower: number; upper: number };
      return (stated.upper - stated.lower) / 3600;
    };
    expect(widthOf('9 hours')).toBeCloseTo(0.5);
    expect(widthOf('10 hours')).toBeCloseTo(1);
  });

  test('the step of a round number is the largest 5 × 10^k that divides it', () => {
    expect([0, 1, 4, 5, 10, 65, 50, 1200, 2500].map(roundStep)).toEqual([0, 0, 0, 5, 5, 5, 50, 50, 500]);
  });
});
