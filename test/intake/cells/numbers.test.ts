import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimalsOf, parseNumber } from '../../../src/intake/cells/numbers.ts';

describe('intake/cells/numbers', () => {
  it('reads what JavaScript prints, to the last bit', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(parseNumber(String(value), '.')).toBe(Number(String(value)));
      }),
    );
  });

  it('rounds as the language does for any decimals, with a shift of the point', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -9_999_999, max: 9_999_999 }),
        fc.integer({ min: 0, max: 12 }),
        fc.integer({ min: -9, max: 9 }),
        (whole, decimals, shift) => {
          const text = (whole / 10 ** 3).toFixed(decimals);
          expect(parseNumber(text, '.', shift) + 0).toBe(Number(`${text}e${shift}`) + 0);
        },
      ),
    );
  });

  it.each([
    ['71.3', '.', 71.3],
    [' 71,3 ', ',', 71.3],
    ['+0.0921E+03', '.', 92.1],
    ['.591E0', '.', 0.591],
    ['-.5', '.', -0.5],
    ['007', '.', 7],
    ['12345678901234567', '.', 12345678901234568],
  ] as const)('reads %j', (text, mark, value) => {
    expect(parseNumber(text, mark)).toBe(value);
  });

  it.each(['', ' ', '-', '.', '22.', '0x10', '1e', '1_000', '1 000', 'Infinity', 'NaN', '1,5', '1.2.3', '--1', '1e999', '٣'])(
    'refuses %j under a decimal point',
    (text) => {
      expect(parseNumber(text, '.')).toBeNaN();
    },
  );

  it('keeps every digit over a unit: 71.3 mV and 9 mV', () => {
    expect(parseNumber('71.3', '.', -3)).toBe(0.0713);
    expect(parseNumber('9', '.', -3)).toBe(0.009);
  });

  it('reads within bounds of a longer text', () => {
    expect(parseNumber('a;12,5;b', ',', 0, 2, 6)).toBe(12.5);
  });

  it.each([
    ['71.30', 2],
    ['4e3', 0],
    ['1.2e-4', 5],
    ['\u22121.20e-4', 6],
    ['12', 0],
  ])('counts the decimals of %s', (text, decimals) => {
    expect(decimalsOf(text, '.')).toBe(decimals);
  });
});
