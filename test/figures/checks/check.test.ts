import { describe, expect, test } from 'vitest';
import { agrees, asPrinted, digitsReached, digitsRequired, toDigits, within } from '../../../src/figures/checks/check.ts';

describe('figures/checks/check', () => {
  // McCullough 1998: the log relative error counts the significant digits that agree.
  test('digits that agree, at most fifteen', () => {
    expect(digitsReached(toDigits('', '200', 200.02, 9))).toBeCloseTo(4, 6);
    expect(digitsReached(toDigits('', '200', 200, 9))).toBe(15);
    expect(digitsReached(toDigits('', '0', 1e-7, 9))).toBeCloseTo(7, 9);
    expect(digitsReached(toDigits('', '1', 5, 9))).toBe(0);
    expect(digitsReached(toDigits('', '1', Number.NaN, 9))).toBe(0);
  });

  test.each([
    ['32', 31.66, 31.4],
    ['9.7', 9.682, 9.64],
    ['0.170', 0.1704, 0.1706],
    ['-0.588', -0.5884, -0.5886],
    ['1.2e-3', 0.00124, 0.00126],
    ['50000838', 50000838.4, 50000838.6],
  ])('as printed: %s is met by %d and not by %d', (printed, near, far) => {
    expect(agrees(asPrinted('', printed, near))).toBe(true);
    expect(agrees(asPrinted('', printed, far))).toBe(false);
  });

  test('a demand in digits is met at its edge and failed beyond', () => {
    expect(agrees(toDigits('', '2', 2 + 1.9e-9, 9))).toBe(true);
    expect(agrees(toDigits('', '2', 2 + 2.1e-9, 9))).toBe(false);
    expect(agrees(toDigits('', '2', Number.NaN, 9))).toBe(false);
    expect(digitsRequired(toDigits('', '2', 2, 9))).toBeCloseTo(9, 9);
  });

  test('a demand in its own unit', () => {
    expect(agrees(within('', 1523.5, 1524, 1, 'one row'))).toBe(true);
    expect(agrees(within('', 1523.5, 1525, 1, 'one row'))).toBe(false);
  });
});
