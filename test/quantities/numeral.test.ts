import { describe, expect, test } from 'vitest';
import { numeralAt } from '../../src/quantities/numeral.ts';

describe('quantities/numeral', () => {
  test.each([
    ['22.40 °C', 0, 22.4, 0.01, 5],
    ['x -3', 2, -3, 1, 4],
    ['1.5e3', 0, 1500, 100, 5],
    ['2E−3', 0, 0.002, 0.001, 4],
  ])('%j at %d', (text, offset, value, step, end) => {
    expect(numeralAt(text, offset, 'a number')).toEqual({ value, step, end });
  });

  test('no number', () => {
    expect(numeralAt('x', 0, 'a number')).toEqual({ failure: 'no number at "x"', offset: 0, expected: 'a number' });
  });
});
