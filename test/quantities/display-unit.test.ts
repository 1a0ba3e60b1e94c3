import { describe, expect, test } from 'vitest';
import { askedUnit, displayUnit, smallerUnit } from '../../src/quantities/display-unit.ts';

describe('quantities/display-unit', () => {
  test.each([
    ['Hz', 2.6e9, 'GHz'],
    ['Hz', 2.6e6, 'MHz'],
    ['Hz', 0.5, 'Hz'],
    ['A', 0.812, 'mA'],
    ['A', 1e-12, 'nA'],
    ['W', 0, 'W'],
    ['W', 1, 'W'],
    ['s', 119.9, 's'],
    ['s', 120, 'min'],
    ['s', 7200, 'h'],
    ['s', 0, 's'],
    ['V/A', 0.05, 'mΩ'],
    ['K', 1e-3, 'K'],
    ['K/W', 1e6, 'K/W'],
    ['J/points', 0.02, 'mJ/points'],
    ['W/(m²·K)', 5, 'W/(m²·K)'],
    ['1', 5, ''],
    ['points', 1e6, 'points'],
  ])('%s of %d is printed in %j', (canonical, magnitude, spelling) => {
    expect(displayUnit(canonical, magnitude).spelling).toBe(spelling);
  });

  test('the next smaller', () => {
    expect(smallerUnit('s', 'h')?.spelling).toBe('min');
    expect(smallerUnit('s', 'ns')).toBeUndefined();
  });

  test('asked for', () => {
    expect(askedUnit('W', 'mW')?.unit.factor).toBe(1e-3);
    expect(askedUnit('1', '1')?.spelling).toBe('');
    expect(askedUnit('W', 'V')).toBeUndefined();
  });
});
