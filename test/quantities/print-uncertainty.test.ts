import { describe, expect, test } from 'vitest';
import { printUncertainty } from '../../src/quantities/print.ts';
import { exact, independent, unknown } from '../../src/quantities/uncertainty.ts';
import { source } from './helpers.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('quantities/print-uncertainty', () => {
  // Form of a range: NIST SP 811 (2008), 7.7.
  test.each([
    [independent(71.34, '°C', 0.6, source('a')), [70.94, 73.11], '70.9 °C to 73.1 °C (95 %)'],
    [independent(71.34, '°C', 0.6, source('a')), [-1.2, 3.4], '−1.2 °C to 3.4 °C (95 %)'],
    [exact(3, '1'), [1.2, 6.8], '1.2 to 6.8 (95 %)'],
    [unknown(0.812, 'W'), [0.7, 0.9], '700 mW to 900 mW (95 %)'],
    [independent(1500, 's', 60, source('a')), [1380, 1680], '23.0 min to 28.0 min (95 %)'],
    [exact(3, 'W'), [3, 3], ''],
  ] as const)('an interval of its own: %o, %o', (quantity, interval, text) => {
    expect(plain(printUncertainty(quantity, { interval }))).toBe(text);
  });

  test('an interval of repeatability only says so', () => {
    const die = { ...independent(61, '°C', 0.3, source('a')), step: 1, repeatabilityOnly: true };
    expect(plain(printUncertainty(die, { interval: [60.5, 61.7] }))).toBe('repeatability only: 60.5 °C to 61.7 °C (95 %)');
  });

  test('no interval is as none given', () => {
    const measured = independent(71.34, '°C', 0.6, source('a'));
    expect(printUncertainty(measured, { interval: undefined })).toBe(printUncertainty(measured));
    expect(printUncertainty({ ...unknown(3, 'W'), repeatabilityOnly: true })).toBe('uncertainty unknown');
  });

  test('in the unit asked for', () => {
    expect(plain(printUncertainty(independent(2, 'W', 0.1, source('a')), { unit: 'mW', interval: [1.85, 2.2] }))).toBe(
      '1850 mW to 2200 mW (95 %)',
    );
  });
});
