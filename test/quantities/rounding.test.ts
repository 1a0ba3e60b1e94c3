import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rangeOfStep, roundDecimal, roundOutward, roundToRange, sizeOf, uncertaintyPlace } from '../../src/quantities/rounding.ts';

describe('quantities/rounding', () => {
  // ISO 31-0 Annex B (now ISO 80000-1 Annex B), as translated in JIS Z 8401:1999.
  test.each([
    [12.223, -1, '12.2'],
    [12.251, -1, '12.3'],
    [12.275, -1, '12.3'],
    [1222.3, 1, '1220'],
    [1225.1, 1, '1230'],
    [1227.5, 1, '1230'],
  ])('nearest multiple: %d to 10^%d is %s', (value, place, rounded) => {
    expect(roundDecimal(value, place)).toBe(rounded);
  });

  test.each([
    [12.21, 1, -1, '12.2', '12.3'],
    [-12.21, 1, -1, '-12.3', '-12.2'],
    [12.2, 1, -1, '12.2', '12.2'],
    [72.2, 5, -1, '72.0', '72.5'],
    [0.04, 1, 0, '0', '1'],
    [-0.04, 1, 0, '-1', '0'],
  ] as const)('outward: %d to %d × 10^%d lies between %s and %s', (value, factor, place, down, up) => {
    expect([roundOutward(value, { factor, place }, 'down'), roundOutward(value, { factor, place }, 'up')]).toEqual([down, up]);
  });

  // ISO 80000-1 Annex B rule A; the pair of thousands from memory.
  test.each([
    [12.25, -1, '12.2'],
    [12.35, -1, '12.4'],
    [1225.0, 1, '1220'],
    [1235.0, 1, '1240'],
  ])('a tie goes to the even multiple: %d to 10^%d is %s', (value, place, rounded) => {
    expect(roundDecimal(value, place)).toBe(rounded);
  });

  // JIS Z 8401:1999: rounding in stages would give 5.4 and 14.6.
  test.each([
    [5.346, '5.3'],
    [14.556, '14.6'],
    [14.545, '14.5'],
    [14.55, '14.6'],
    [14.45, '14.4'],
  ])('once, not in stages: %d is %s', (value, rounded) => {
    expect(roundDecimal(value, -1)).toBe(rounded);
  });

  // ASME A112.18.1 Annex A.
  test('even hundredths', () => {
    expect(roundDecimal(1.655, -2)).toBe('1.66');
    expect(roundDecimal(1.625, -2)).toBe('1.62');
  });

  // NIST SP 811 (2008), B.7.1.
  test.each([
    [6.9749515, -2, '6.97'],
    [6.9749515, -4, '6.9750'],
    [6.9749515, -6, '6.974952'],
    [6.9749515, -1, '7.0'],
    [6.9749505, -6, '6.974950'],
  ])('%d to 10^%d is %s', (value, place, rounded) => {
    expect(roundDecimal(value, place)).toBe(rounded);
  });

  // Each of these goes wrong when the binary double is rounded (ECMA-262 Number.prototype.toFixed).
  test.each([
    [12.2135, -3, '12.214'],
    [1.005, -2, '1.00'],
    [1.45, -1, '1.4'],
    [8.345, -2, '8.34'],
    [-2.5, 0, '-2'],
    [10.47, 0, '10'],
    [1.015, -2, '1.02'],
  ])('reads the decimal numeral: %d to 10^%d is %s', (value, place, rounded) => {
    expect(roundDecimal(value, place)).toBe(rounded);
  });

  // JCGM 100:2008, 7.2.6: "28.05 kHz should be rounded down to 28 kHz"; of 10.47 mΩ → 11 mΩ, which it allows, we keep the nearest.
  test('an uncertainty goes to the nearest', () => {
    expect(roundDecimal(28.05, 0)).toBe('28');
  });

  test('what rounds to zero has no sign', () => {
    expect(roundDecimal(-0.04, -1)).toBe('0.0');
    expect(roundDecimal(-4, 1)).toBe('0');
  });

  test('never off by more than half a range, and rounding again changes nothing', () => {
    const range = fc.record({
      factor: fc.constantFrom(1 as const, 2 as const, 5 as const),
      place: fc.integer({ min: -6, max: 6 }),
    });
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), range, (value, { factor, place }) => {
        const rounded = roundToRange(value, { factor, place });
        expect(Math.abs(Number(rounded) - value)).toBeLessThanOrEqual(0.5 * sizeOf({ factor, place }) * (1 + 1e-9) + 1e-9);
        expect(roundToRange(Number(rounded), { factor, place })).toBe(rounded);
      }),
    );
  });

  test('a number that is not finite is refused', () => {
    expect(() => roundDecimal(Number.NaN, 0)).toThrow(RangeError);
  });

  // Particle Data Group, Review of Particle Physics, Introduction 5.3.
  test.each([
    [0.1, -2],
    [0.354, -2],
    [0.355, -1],
    [0.949, -1],
    [0.95, -1],
    [0.9999, -1],
    [1, -1],
    [27, 0],
    [612, 2],
  ])('the place of an uncertainty of %d is 10^%d', (uncertainty, place) => {
    expect(uncertaintyPlace(uncertainty)).toBe(place);
  });

  test('an uncertainty of 950 to 999 is written with the two digits of 1.0', () => {
    expect(roundDecimal(0.97, uncertaintyPlace(0.97))).toBe('1.0');
  });

  test.each([
    [1, 1],
    [0.1, 0.1],
    [0.0625, 0.1],
    [0.5, 0.5],
    [0.25, 0.5],
    [0.2, 0.2],
    [0.1 * 3, 0.5],
    [6, 10],
    [1 / 60, 0.02],
    [0.12, 0.1],
    [0.13, 0.2],
    [0.24, 0.2],
    [0.59, 0.5],
  ])('a step of %d is printed in multiples of %d', (step, size) => {
    expect(sizeOf(rangeOfStep(step))).toBe(size);
  });

  test('a power of a current read in steps of 0.01 A at 12 V prints what is nearest to it', () => {
    expect(roundToRange(0.21 * 12, rangeOfStep(0.01 * 12))).toBe('2.5');
  });
});
