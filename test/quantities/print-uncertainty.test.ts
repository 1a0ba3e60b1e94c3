import { describe, expect, test } from 'vitest';
import { printQuantity, printUncertainty } from '../../src/quantities/print.ts';
import { exact, independent, unknown } from '../../src/quantities/uncertainty.ts';
import { source } from './helpers.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('quantities/print-uncertainty', () => {
  // Form of a range: NIST SP 811 (2008), 7.7.
  test.each([
    [independent(71.34, '°C', 0.6, source('a')), [70.94, 73.11], '70.9 °C to 73.2 °C (95 %)'],
    [independent(71.34, '°C', 0.6, source('a')), [-1.2, 3.4], '−1.2 °C to 3.4 °C (95 %)'],
    [exact(3, '1'), [1.2, 6.8], '1 to 7 (95 %)'],
    [unknown(0.812, 'W'), [0.7, 0.9], '700 mW to 900 mW (95 %)'],
    [independent(1500, 's', 60, source('a')), [1380, 1680], '23.0 min to 28.0 min (95 %)'],
    [exact(3, 'W'), [3, 3], ''],
  ] as const)('an interval of its own: %o, %o', (quantity, interval, text) => {
    expect(plain(printUncertainty(quantity, { interval }))).toBe(text);
  });

  test('an interval of repeatability only says so', () => {
    const die = { ...independent(61, '°C', 0.3, source('a')), step: 1, repeatabilityOnly: true };
    expect(plain(printUncertainty(die, { interval: [60.5, 61.7] }))).toBe('repeatability only: 60 °C to 62 °C (95 %)');
  });

  test('no interval is as none given', () => {
    const measured = independent(71.34, '°C', 0.6, source('a'));
    expect(printUncertainty(measured, { interval: undefined })).toBe(printUncertainty(measured));
    expect(printUncertainty({ ...unknown(3, 'W'), repeatabilityOnly: true })).toBe('uncertainty unknown');
  });

  // What a newcomer saw: 19.7 min beside 19.650 min to 19.667 min. Values in s; the step is the sampling's.
  test.each([
    [{ ...exact(1180, 's'), step: 2 }, [1179, 1180], '19.7 min', '19.6 min to 19.7 min (95 %)'],
    [{ ...independent(72.3, '°C', 0.05, source('a')), step: 0.5 }, [72.2, 72.4], '72.5 °C', '72.0 °C to 72.5 °C (95 %)'],
    [{ ...independent(-72.3, '°C', 0.05, source('a')), step: 0.5 }, [-72.4, -72.2], '−72.5 °C', '−72.5 °C to −72.0 °C (95 %)'],
    [{ ...exact(1182, 's'), step: 6 }, [1182, 1188], '19.7 min', '19.7 min to 19.8 min (95 %)'],
  ] as const)('the printed value lies within its printed interval: %o, %o', (quantity, interval, value, text) => {
    expect(plain(printQuantity(quantity).text)).toBe(value);
    expect(plain(printUncertainty(quantity, { interval }))).toBe(text);
  });

  test('no value of many lies outside', () => {
    const number = (text: string) => Number(text.replace('−', '-'));
    for (let k = 0; k < 500; k++) {
      const value = 30 + ((k * 7919) % 1000) / 37;
      const [low, high] = [value - ((k * 31) % 17) / 40 - 0.001, value + ((k * 13) % 19) / 900 + 0.001];
      const quantity = {
        ...independent(value, '°C', [0.004, 0.06, 0.7, 3][k % 4]!, source('a')),
        step: [0.01, 0.2, 0.5, 1][k % 3]!,
      };
      const ends = [...printUncertainty(quantity, { interval: [low, high] }).matchAll(/[−\d.]+(?=\u00a0°C)/g)].map(([end]) =>
        number(end),
      );
      const printed = number(printQuantity(quantity).number);
      expect(ends).toHaveLength(2);
      expect(ends[0]).toBeLessThanOrEqual(Math.min(low, printed));
      expect(ends[1]).toBeGreaterThanOrEqual(Math.max(high, printed));
    }
  });

  test('in the unit asked for', () => {
    expect(plain(printUncertainty(independent(2, 'W', 0.1, source('a')), { unit: 'mW', interval: [1.85, 2.2] }))).toBe(
      '1850 mW to 2200 mW (95 %)',
    );
  });
});
