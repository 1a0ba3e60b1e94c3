import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decimalOf, leadingPlace, numeralOf, shift } from '../../src/quantities/decimal.ts';

describe('quantities/decimal', () => {
  test('the decimal behind a number is its shortest numeral, not the binary double', () => {
    expect(decimalOf(12.2135)).toEqual({ negative: false, digits: 122135n, exponent: -4 });
    expect(decimalOf(-1.5e-9)).toEqual({ negative: true, digits: 15n, exponent: -10 });
  });

  test('a number that is not finite is refused', () => {
    expect(() => decimalOf(Number.NaN)).toThrow('expected a finite number, got NaN');
    expect(() => decimalOf(Number.POSITIVE_INFINITY)).toThrow(RangeError);
  });

  test('a numeral read back is the number', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => Number(numeralOf(decimalOf(value))) === value),
    );
  });

  test('zero has no sign and no padding', () => {
    expect(numeralOf({ negative: true, digits: 0n, exponent: 3 })).toBe('0');
    expect(numeralOf({ negative: true, digits: 0n, exponent: -1 })).toBe('0.0');
  });

  test('shifting the point keeps every digit where multiplying does not', () => {
    expect(9 * 0.001).not.toBe(0.009);
    expect(shift(9, -3)).toBe(0.009);
    expect(shift(1.5e-9, 9)).toBe(1.5);
    expect(shift(Number.POSITIVE_INFINITY, 2)).toBe(Number.POSITIVE_INFINITY);
  });

  test('the place of the first digit', () => {
    expect([612, 0.05, -0.99, 1].map(leadingPlace)).toEqual([2, -2, -1, 0]);
    expect(leadingPlace(0)).toBe(Number.NEGATIVE_INFINITY);
  });
});
