import { describe, expect, test } from 'vitest';
import { decimalsOf, displayUnit, fixed, reading, withUnit } from '../../../src/plots/drawing/wording.ts';

describe('plots/drawing/wording', () => {
  // Prefixes of the SI Brochure, 9th edition, table 7.
  test.each([
    ['clock', 'Hz', 2.4e9, { unit: 'GHz', divisor: 1e9 }],
    ['clock', 'Hz', 6e8, { unit: 'MHz', divisor: 1e6 }],
    ['current', 'A', 0.31, { unit: 'mA', divisor: 1e-3 }],
    ['power', 'W', 7, { unit: 'W', divisor: 1 }],
    ['power', 'W', 0, { unit: 'W', divisor: 1 }],
    ['temperature', '°C', 1200, { unit: '°C', divisor: 1 }],
    ['utilisation', '1', 1, { unit: '%', divisor: 0.01 }],
  ] as const)('%s in %s up to %d is shown so', (kind, unit, largest, shown) => {
    expect(displayUnit(kind, unit, largest)).toEqual(shown);
  });

  test('numbers have a minus sign and no negative zero; a count has no unit', () => {
    expect(fixed(-3.14, 1)).toBe('−3.1');
    expect(fixed(-0.04, 1)).toBe('0.0');
    expect(reading(71.25, 1, '°C')).toBe('71.3 °C');
    expect(reading(3, 0, '1')).toBe('3');
    expect(withUnit('Fan', '1')).toBe('Fan');
  });

  test.each([
    [0.1, 1],
    [0.25, 2],
    [5, 0],
    [0.5e-3, 4],
    [1 / 3, 6],
  ])('a step of %d needs %d decimals', (step, decimals) => {
    expect(decimalsOf(step)).toBe(decimals);
  });
});
