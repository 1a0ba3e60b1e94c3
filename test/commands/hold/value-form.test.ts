import { describe, expect, test } from 'vitest';
import { valueForm } from '../../../src/commands/hold/value-form.ts';
import type { Quantity } from '../../../src/quantities/quantity.ts';

function known(value: number, unit: string, u: number): Quantity {
  return { value, unit, parts: [{ source: 'a', share: u, dof: null }] } as unknown as Quantity;
}

describe('commands/hold/value-form', () => {
  test.each([
    ['about 71 degrees', 'fast.peak', { value: 71.3, unit: '°C', parts: [] }, ':value[fast.peak]{to="1 °C"}'],
    ['6 degrees warmer', 'a.x - b.x', { value: 6.2, unit: 'K', parts: [] }, ':value[a.x - b.x]{to="1 K"} warmer'],
    ['2 watts less', 'a.x - b.x', { value: -2.13, unit: 'W', parts: [] }, ':value[b.x - a.x]{to="1 W"} less'],
    ['18 percent faster', 's.speedup', { value: 1.18, unit: '1', parts: [] }, ':value[s.speedup - 1]{unit=%} faster'],
    ['27 percent less', 's.per_watt', { value: 0.73, unit: '1', parts: [] }, ':value[1 - s.per_watt]{unit=%} less'],
    ['twice', 'a.x / b.x', { value: 2.04, unit: '1', parts: [] }, ':value[a.x / b.x]{to="1"} times'],
    ['20 minutes', 'fast.t', { value: 1180, unit: 's', parts: [] }, ':value[fast.t]{to="1 min"}'],
  ] as const)('%s', (words, is, quantity, expected) => {
    expect(valueForm(words, is, quantity as unknown as Quantity)).toBe(expected);
  });

  test.each([
    ['233.6 MB/s', 'MB/s', ':value[a.score]'],
    ['80.7 sweeps/s', 'sweeps/s', ':value[a.score]'],
    ['8.31\u00a0GB/s', 'GB/s', ':value[a.score]'],
    ['about 1,250 points more', 'points', ':value[a.score] more'],
    ['45.6 s', 's', ':value[a.score]'],
  ])('the unit of a score is printed once: %s', (words, unit, expected) => {
    const value = Number(/[\d.,]+/.exec(words)?.[0].replace(',', ''));
    expect(valueForm(words, 'a.score', { ...known(value, unit, value / 1000), step: 0.01 })?.replace(/\{.*\}/, '')).toBe(expected);
  });

  test('a range has no single value, and words without a number none', () => {
    expect(valueForm('10 to 12 W', 'a.x', known(11, 'W', 1))).toBeUndefined();
    expect(valueForm('warm', 'a.x', known(11, 'W', 1))).toBeUndefined();
  });
});
