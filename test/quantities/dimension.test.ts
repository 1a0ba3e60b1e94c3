import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dimensionOf, nameOf, sameDimension, times } from '../../src/quantities/dimension.ts';

const product = (a: string, b: string, power = 1) => nameOf(times(dimensionOf(a), dimensionOf(b), power));

describe('quantities/dimension', () => {
  // Definitions of derived units: BIPM, SI Brochure, 9th ed., Table 4.
  test.each([
    ['V', 'A', 'W'],
    ['W', 's', 'J'],
    ['V/A', 'A', 'V'],
    ['K/W', 'W', 'K'],
    ['Hz', 's', '1'],
    ['A', 's', 'A·s'],
    ['N', 'm', 'J'],
    ['points/J', 's', 'points/W'],
    ['points', 'points', 'points²'],
  ])('%s × %s is %s', (a, b, name) => {
    expect(product(a, b)).toBe(name);
  });

  test.each([
    ['K', 'W', 'K/W'],
    ['J', 'W', 's'],
    ['W', 'V', 'A'],
    ['W', 'Hz', 'J'],
    ['Hz', 'W', 'Hz/W'],
    ['1', 's', 'Hz'],
    ['K', 's', 'K/s'],
    ['J', 'points', 'J/points'],
    ['MB/s', 'W', 'MB/J'],
    ['points', 'points', '1'],
    ['K', 'K', '1'],
  ])('%s ÷ %s is %s', (a, b, name) => {
    expect(product(a, b, -1)).toBe(name);
  });

  test('every dimension has one name, and the name reads back as it', () => {
    const names = ['V', 'A', 'K', 's', 'm', 'W', 'J', 'Hz', 'points', 'MB'];
    const drawn = fc.array(fc.tuple(fc.constantFrom(...names), fc.integer({ min: -2, max: 2 })), { maxLength: 5 });
    fc.assert(
      fc.property(drawn, (factors) => {
        const dimension = factors.reduce((sum, [name, power]) => times(sum, dimensionOf(name), power), dimensionOf('1'));
        expect(sameDimension(dimensionOf(nameOf(dimension)), dimension)).toBe(true);
        expect(nameOf(dimensionOf(nameOf(dimension)))).toBe(nameOf(dimension));
      }),
    );
  });

  test('a degree Celsius in a quotient is a kelvin', () => {
    expect(nameOf(dimensionOf('°C/W'))).toBe('K/W');
  });
});
