import { describe, expect, test } from 'vitest';
import { numeralAt } from '../../src/quantities/numeral.ts';

describe('quantities/numeral', () => {
  test.each([
    ['22.40 °C', 0, 22.4, 0.01, true, 5],
    ['x -3', 2, -3, 1, false, 4],
    ['200', 0, 200, 1, false, 3],
    ['1.5e3', 0, 1500, 100, false, 5],
    ['2.0e3', 0, 2000, 100, true, 5],
    ['2E−3', 0, 0.002, 0.001, false, 4],
  ])('%j at %d', (text, offset, value, step, padded, end) => {
    expect(numeralAt(text, offset, 'a number')).toEqual({ value, step, padded, end });
  });

  test('no number', () => {
    expect(numeralAt('x', 0, 'a number')).toEqual({ failure: 'no number at "x"', offset: 0, expected: 'a number' });
  });
});
