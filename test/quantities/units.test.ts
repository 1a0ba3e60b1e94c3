import fc from 'fast-check';
import unit from 'unitmath/es/UnitMath.js';
import { describe, expect, test } from 'vitest';
import { isRefusal } from '../../src/quantities/refusal.ts';
import { convert, fromCanonical, nearestUnit, readUnit, toCanonical, unitFor, unitsOf } from '../../src/quantities/units.ts';
import { expectClose } from './helpers.ts';

describe('quantities/units', () => {
  test.each(['°C', '℃', 'degC', 'deg C', 'deg. C', 'degrees C', 'C', "'C", '’C', '´C', '`C', 'ºC', '˚ C', ' Celsius '])(
    '%j is degrees Celsius',
    (spelling) => {
      expect(readUnit(spelling)).toMatchObject({ canonical: '°C', factor: 1, offset: 0 });
    },
  );

  test.each([
    ['Ω', 'V/A', 1],
    ['\u2126', 'V/A', 1],
    ['mΩ', 'V/A', 1e-3],
    ['µA', 'A', 1e-6],
    ['μA', 'A', 1e-6],
    ['uA', 'A', 1e-6],
    ['mV', 'V', 1e-3],
    ['mW', 'W', 1e-3],
    ['kHz', 'Hz', 1e3],
    ['MHz', 'Hz', 1e6],
    ['GHz', 'Hz', 1e9],
    ['ms', 's', 1e-3],
    ['min', 's', 60],
    ['h', 's', 3600],
    ['rpm', 'rpm', 1],
    ['%', '1', 0.01],
    ['K/W', 'K/W', 1],
    ['°C/W', 'K/W', 1],
    ['m°C', '°C', 1e-3],
    ['millidegrees C', '°C', 1e-3],
    ['W/(m² K)', 'W/(m²·K)', 1],
    ['J / K', 'J/K', 1],
    ['1/s', 'Hz', 1],
    ['V A', 'W', 1],
    ['mA h', 'A·s', 3.6],
    ['mAh', 'A·s', 3.6],
    ['m/s^2', 'm/s²', 1],
  ])('%s is %s × %d', (spelling, canonical, factor) => {
    const read = readUnit(spelling)!;
    expect(read.canonical).toBe(canonical);
    expectClose(read.factor, factor, 1e-15);
    expect(read.offset).toBe(0);
  });

  test.each([
    '',
    'points',
    'Wats',
    'constructor',
    'toString',
    '__proto__',
    'K/',
    '/W',
    'K//W',
    'mhz',
    'VA r',
    'mmV',
    'link',
    '°',
    'F',
  ])('%j is no unit', (spelling) => {
    expect(readUnit(spelling)).toBeUndefined();
  });

  // Fixed points: NIST SP 811 (2008), B.6 and B.8.
  test('absolute temperatures in kelvin and Fahrenheit', () => {
    expect(toCanonical(333.15, readUnit('K', 'temperature')!)).toBeCloseTo(60, 10);
    expect(toCanonical(212, readUnit('°F')!)).toBeCloseTo(100, 10);
    expect(toCanonical(-40, readUnit('F', 'temperature')!)).toBeCloseTo(-40, 10);
    expect(toCanonical(45312, readUnit('m°C')!)).toBe(45.312);
  });

  test('a bare kelvin is a difference, and so is any scale where a difference is meant', () => {
    expect(readUnit('K')).toMatchObject({ canonical: 'K', factor: 1, offset: 0 });
    expect(readUnit('°C', 'difference')).toMatchObject({ canonical: 'K', factor: 1, offset: 0 });
    expectClose(toCanonical(9, readUnit('°F', 'difference')!), 5, 1e-15);
  });

  // 1 Wh = 3600 J exactly: NIST SP 811 (2008), B.8. The products are plain arithmetic.
  test('energy', () => {
    expect(toCanonical(1, readUnit('Wh')!)).toBe(3600);
    expect(toCanonical(1, readUnit('kWh')!)).toBe(3.6e6);
    expectClose(convert(5 * 86400, 'J', 'kWh') as number, 0.12, 1e-15);
    expectClose(convert(365 * 86400, 'J', 'kWh') as number, 8.76, 1e-15);
    expectClose(convert(365.25 * 86400, 'J', 'kWh') as number, 8.766, 1e-15);
    expectClose(convert(toCanonical(10_000, readUnit('mAh')!) * 3.7, 'J', 'Wh') as number, 37, 1e-15);
  });

  // unitmath 0.8.8 as an independent reference for our own table.
  test.each(['mV', 'kV', 'mA', 'mW', 'kW', 'kJ', 'kHz', 'MHz', 'GHz', 'ms', 'min', 'h', 'day', 'Wh', 'kWh', 'mohm', 'kohm'])(
    '%s agrees with a units library',
    (spelling) => {
      expectClose(readUnit(spelling)!.factor, unit(1, spelling).getNormalizedValue(), 1e-14);
    },
  );

  test('powers of ten keep every digit', () => {
    expect(toCanonical(9, readUnit('mV')!)).toBe(0.009);
    expect(fromCanonical(0.009, readUnit('mV')!)).toBe(9);
  });

  test('there and back through every spelling people read', () => {
    const spellings = ['°C', 'K', 's', 'Hz', 'A', 'V', 'W', 'J', '1', 'V/A', 'A·s'].flatMap((canonical) =>
      unitsOf(canonical).map((spelling) => [canonical, spelling] as const),
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...spellings),
        fc.double({ min: -1e5, max: 1e5, noNaN: true }),
        ([canonical, spelling], value) => {
          const there = unitFor(canonical, spelling);
          if (isRefusal(there)) throw new Error(there.refused);
          expect(Math.abs(toCanonical(fromCanonical(value, there), there) - value)).toBeLessThanOrEqual(
            1e-9 * Math.max(1, Math.abs(value)) * 1e-3 + 1e-12,
          );
        },
      ),
    );
  });

  test("a score's unit may be any word", () => {
    expect(readUnit('points', 'score')!.canonical).toBe('points');
    expect(readUnit('frames per second', 'score')!.canonical).toBe('frames per second');
    expect(readUnit('MB/s', 'score')!.canonical).toBe('MB/s');
    expect(readUnit('ms', 'score')).toMatchObject({ canonical: 's', factor: 1e-3 });
    expect(readUnit('a(b)', 'score')).toBeUndefined();
    expect(readUnit('MB/', 'score')).toBeUndefined();
    expect(readUnit('', 'score')).toBeUndefined();
  });

  test('conversion of canonical values', () => {
    expect(convert(2.6e9, 'Hz', 'GHz')).toBe(2.6);
    expectClose(convert(60, '°C', 'K') as number, 333.15, 1e-15);
    expectClose(convert(100, '°C', '°F') as number, 212, 1e-14);
    expect(convert(0.035, 'J/points', 'mJ/points')).toBe(35);
    expect(convert(3, 'points', 'points')).toBe(3);
  });

  test.each([
    [1, 'Hz', 'W', 'a value in Hz cannot be given in W', 'one of Hz, kHz, MHz, GHz'],
    [1, 'W', 'Wats', 'unknown unit Wats', 'one of µW, mW, W, kW'],
    [1, 'K', '°F', 'a temperature difference in K cannot be given in °F', 'one of mK, K'],
    [1, 'points', 'runs', 'unknown unit runs', 'one of points'],
  ])('%d %s in %s is refused', (value, from, to, refused, expected) => {
    expect(convert(value, from, to)).toEqual({ refused, expected });
  });

  test.each([
    ['mhz', 'MHz'],
    ['KHz', 'kHz'],
    ['Wats', 'W'],
    ['celcius', '°C'],
    ['degc', '°C'],
    ['secnds', 's'],
  ])('the nearest unit to %s is %s', (spelling, near) => {
    expect(nearestUnit(spelling)).toBe(near);
  });

  test.each(['', 'F', 'bogomips'])('%j is near no unit', (spelling) => {
    expect(nearestUnit(spelling)).toBeUndefined();
  });

  test('the caller cannot change the list of spellings', () => {
    unitsOf('W').push('x');
    expect(unitsOf('W')).toEqual(['µW', 'mW', 'W', 'kW']);
    expect(unitsOf('K/W')).toEqual(['K/W']);
  });
});
