import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { divide, subtract } from '../../src/quantities/arithmetic.ts';
import { isParseFailure, parseQuantity } from '../../src/quantities/parse.ts';
import { printQuantity, printUncertainty } from '../../src/quantities/print.ts';
import type { Quantity } from '../../src/quantities/quantity.ts';
import { exact, independent, unknown } from '../../src/quantities/uncertainty.ts';
import { anyQuantity, got, source } from './helpers.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const shown = (quantity: Quantity, unit?: string) => plain(printQuantity(quantity, unit === undefined ? {} : { unit }).text);
const spread = (quantity: Quantity, unit?: string) => plain(printUncertainty(quantity, unit === undefined ? {} : { unit }));
function stated(text: string): Quantity {
  const read = parseQuantity(text, source('stated'));
  if (isParseFailure(read)) throw new Error(read.failure);
  return read;
}
const measured = (value: number, unit: string, u: number, step?: number): Quantity => ({
  ...independent(value, unit, u, source('a')),
  ...(step !== undefined && { step }),
});

describe('quantities/print', () => {
  // Particle Data Group, Review of Particle Physics, Introduction 5.3 (first two, from memory); the README of a rounding library; a page of the STAR collaboration.
  test.each([
    [0.827, 0.119, '0.83'],
    [0.827, 0.367, '0.8'],
    [12.2135, 0.03215, '12.214'],
    [12.2135, 0.06515, '12.21'],
    [0.279008, 0.000766099, '0.2790'],
    [0.279008, 0.0123261, '0.279'],
    // NIST GLP 9 (2019): 0.0213 to two digits, the value to the same place.
    [1.0226, 0.0213, '1.023'],
  ])('%d with u %d prints %s', (value, u, text) => {
    expect(shown(measured(value, '1', u))).toBe(text);
  });

  // JCGM 100:2008, 7.2.6: y = 10.057 62 Ω with uc = 27 mΩ is given as 10.058 Ω.
  test('a resistance of the guide', () => {
    expect(shown(measured(10.05762, 'V/A', 0.027))).toBe('10.058 Ω');
  });

  test.each([
    [exact(2.6e9, 'Hz'), '2.6 GHz'],
    [exact(2.4005e9, 'Hz'), '2.4005 GHz'],
    [exact(1_416_000_000, 'Hz'), '1.416 GHz'],
    [exact(0.04, 'V'), '40 mV'],
    [exact(0.009, 'V'), '9 mV'],
    [exact(0, 'V'), '0 V'],
    [exact(85, '°C'), '85 °C'],
    [exact(-5, '°C'), '−5 °C'],
    [exact(0.1 + 0.2, 'K'), '0.3 K'],
    [exact(4 / 3, '1'), '1.33333'],
    [exact(3 / 13, '1'), '0.230769'],
    [exact(1 / 3, 'Hz'), '0.333333 Hz'],
    [exact(6.62e-34, 'points'), '6.62 × 10⁻³⁴ points'],
    [exact(0.95, '1'), '0.95'],
    [exact(12, 'V·A'), '12 V·A'],
    [exact(0.5, 'MB/J'), '0.5 MB/J'],
  ])('an exact quantity prints all its digits', (quantity, text) => {
    expect(shown(quantity)).toBe(text);
    expect(spread(quantity)).toBe('');
  });

  test.each([
    ['2.0 GHz', '2.0 GHz'],
    ['2 GHz', '2 GHz'],
    ['1500.0 MHz', '1.5000 GHz'],
    ['12.00 V', '12.00 V'],
    ['0.080 V', '80 mV'],
    ['0.0 mV', '0 V'],
    ['84.0 °C', '84.0 °C'],
    ['1.0e5 Hz', '100 kHz'],
    ['120.0 s', '2 min'],
  ])('an exact quantity written %s keeps its zeros: %s', (text, printed) => {
    expect(shown(stated(text))).toBe(printed);
  });

  test('what is computed from exact quantities does not', () => {
    const [fast, rated] = [stated('2.60 GHz'), stated('2.00 GHz')];
    expect(shown(got(subtract(fast, rated)))).toBe('600 MHz');
    expect(shown(got(divide(fast, rated)))).toBe('1.3');
  });

  test.each([
    [measured(0.812345, 'A', 0.004), '812 mA'],
    [measured(71.34, '°C', 0.6), '71.3 °C'],
    [measured(0.0352, 'J/points', 0.0007), '35.2 mJ/points'],
    [measured(3.1e8, 'Hz/W', 2e6), '310.0 MHz/W'],
    [measured(-0.0024, 'W', 0.03), '−2 mW'],
    [measured(0, 'W', 0.02), '0 mW'],
    [measured(6.621e-5, 's', 1e-6), '66.2 µs'],
    [measured(3600, 'A·s', 40), '1.000 Ah'],
    [measured(4.751, 'K/W', 0.19), '4.75 K/W'],
    [measured(1234567, 'points', 12000), '1235000 points'],
    [measured(1.2e-7, '1', 1e-9), '1.200 × 10⁻⁷'],
  ])('in the prefix people read', (quantity, text) => {
    expect(shown(quantity)).toBe(text);
  });

  test('a number that rounds to a thousand takes the next prefix', () => {
    expect(shown(measured(0.9999, 'A', 0.004))).toBe('1.000 A');
    expect(shown(unknown(999.9e6, 'Hz'))).toBe('1.00 GHz');
  });

  test.each([
    [measured(95.04, 's', 0.5), '95.0 s', '± 1.0 s (95 %)'],
    [measured(0.095, 's', 0.001), '95.0 ms', '± 2.0 ms (95 %)'],
    [measured(1504, 's', 30), '25.1 min', '± 59 s (95 %)'],
    [measured(1504, 's', 300), '25 min', '± 10 min (95 %)'],
    [measured(9004, 's', 100), '2.50 h', '± 3.3 min (95 %)'],
    [exact(1500, 's'), '25 min', ''],
    [exact(3750, 's'), '62.5 min', ''],
    [exact(1510, 's'), '1510 s', ''],
    [exact(7500, 's'), '125 min', ''],
    [exact(9000, 's'), '2.5 h', ''],
  ])('times', (quantity, text, uncertainty) => {
    expect(shown(quantity)).toBe(text);
    expect(spread(quantity)).toBe(uncertainty);
  });

  test.each([
    [measured(61.47, '°C', 0.3, 1), '61 °C', '± 0.6 K (95 %)'],
    [measured(61.5, '°C', 0.3, 1), '62 °C', '± 0.6 K (95 %)'],
    [measured(45.34, '°C', 0.15, 0.5), '45.5 °C', '± 0.3 K (95 %)'],
    [measured(45.0625, '°C', 0.02, 0.0625), '45.1 °C', '± 0.04 K (95 %)'],
    [measured(45.0625, '°C', 2, 0.0625), '45.1 °C', '± 3.9 K (95 %)'],
  ])('never finer than the step', (quantity, text, uncertainty) => {
    expect(shown(quantity)).toBe(text);
    expect(spread(quantity)).toBe(uncertainty);
  });

  test('an uncertainty far below the step keeps a digit', () => {
    expect(spread(measured(1.8012e9, 'Hz', 1e5, 1e8))).toBe('± 0.0002 GHz (95 %)');
  });

  test('unknown uncertainty: to the step, else three digits', () => {
    expect(shown({ ...unknown(45.3125, '°C'), step: 0.1 })).toBe('45.3 °C');
    expect(shown(unknown(45.3125, '°C'))).toBe('45.3 °C');
    expect(shown(unknown(9.999, 'W'))).toBe('10.0 W');
    expect(shown(unknown(0, 'K'))).toBe('0 K');
    expect(spread(unknown(45.3, '°C'))).toBe('uncertainty unknown');
  });

  test('repeatability only', () => {
    expect(spread({ ...measured(61.47, '°C', 0.3), repeatabilityOnly: true })).toBe('repeatability only: ± 0.59 K (95 %)');
    expect(spread({ ...exact(61, '°C'), repeatabilityOnly: true })).toBe('repeatability only');
    expect(shown({ ...exact(61.123456, '°C'), repeatabilityOnly: true })).toBe('61.1 °C');
  });

  test('what cancels exactly is still no finer than the readings', () => {
    const reading = (value: number): Quantity => measured(value, '°C', 0.3, 0.1);
    expect(shown(got(subtract(reading(71.3), reading(22.4))))).toBe('48.9 K');
  });

  // Student's t at 2 degrees of freedom is 4.303: JCGM 100:2008, Table G.2.
  test('few degrees of freedom widen the 95 % uncertainty; its last digit is the value’s', () => {
    expect(spread(independent(37.8, 'points', 0.3, source('repeats', 2)))).toBe('± 1.29 points (95 %)');
    expect(spread(independent(37.8, 'points', 0.3, source('repeats', 1)))).toBe('± 3.81 points (95 %)');
  });

  test('in the unit asked for', () => {
    expect(shown(exact(2.6e9, 'Hz'), 'MHz')).toBe('2600 MHz');
    expect(shown(measured(71.34, '°C', 0.4), '°F')).toBe('160.4 °F');
    expect(spread(measured(71.34, '°C', 0.4), '°F')).toBe('± 1.4 °F (95 %)');
    expect(shown(measured(71.34, '°C', 0.4), 'K')).toBe('344.5 K');
    expect(shown(measured(0.052, '1', 0.001), '%')).toBe('5.20 %');
    expect(shown(measured(0.052, '1', 0.001), '1')).toBe('0.0520');
    expect(shown(measured(432, 'J', 10), 'Wh')).toBe('0.1200 Wh');
    expect(shown(exact(1510, 's'), 'min')).toBe('25.1667 min');
    expect(shown(exact(22.4, '°C'), '°F')).toBe('72.32 °F');
    expect(shown(measured(0.035, 'J/points', 0.001), 'J/points')).toBe('0.0350 J/points');
  });

  test('a unit that it cannot be given in is not used', () => {
    expect(shown(measured(71.34, '°C', 0.6), 'W')).toBe('71.3 °C');
    expect(shown(measured(71.34, '°C', 0.6), 'nonsense')).toBe('71.3 °C');
  });

  // NIST SP 811 (2008), 7.2: a space between number and unit; ISO 80000-1: the minus sign.
  test('no-break space and true minus; value and u unrounded in the printed unit', () => {
    expect(printQuantity(measured(-0.81234, 'A', 0.004))).toEqual({
      text: '−812\u00a0mA',
      number: '−812',
      unit: 'mA',
      value: -812.34,
      u: 4,
    });
    expect(printQuantity(unknown(0.5, '1'))).toEqual({ text: '0.500', number: '0.500', unit: '', value: 0.5, u: null });
    expect(printUncertainty(measured(71.34, '°C', 0.6))).toBe('±\u00a01.2\u00a0K (95\u00a0%)');
  });

  test('what is printed lies within a rounding of the value', () => {
    const unit = fc.constantFrom('W', 'K', '°C', 's', 'Hz', 'K/W', 'points/W', '1', 'V/A');
    fc.assert(
      fc.property(unit.chain(anyQuantity), (quantity) => {
        const { number, value, u, text } = printQuantity(quantity);
        expect(text).not.toMatch(/NaN|undefined|Infinity/);
        const back = Number(number.replace('−', '-').replace(/\u00a0×\u00a010.*/, ''));
        if (!number.includes('×') && !['min', 'h'].includes(printQuantity(quantity).unit)) {
          // An exact value of fourteen digits or more is a quotient, and prints six of them.
          const endless = u === 0 && Number(value.toPrecision(13)) !== Number(value.toPrecision(15));
          expect(Math.abs(back - value)).toBeLessThanOrEqual(0.5 * u! + (endless ? 5e-6 : 1e-9) * Math.abs(value));
        }
      }),
    );
  });
});
