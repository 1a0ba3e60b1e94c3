import { describe, expect, test } from 'vitest';
import { printWithUncertainty } from '../../src/quantities/print-with-uncertainty.ts';
import { exact, independent, unknown } from '../../src/quantities/uncertainty.ts';
import { source } from './helpers.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const measured = (value: number, unit: string, u: number) => independent(value, unit, u, source('a'));

describe('quantities/print-with-uncertainty', () => {
  // One unit after value and half width: NIST SP 811 (2008), 7.2. Half widths: 1.96 u, from a table of the normal distribution.
  test.each([
    ['a temperature', measured(71.34, '°C', 0.6), {}, '71.3 ± 1.2 °C'],
    ['a power', measured(10.391, 'W', 0.046), {}, '10.39 ± 0.09 W'],
    ['a ratio', measured(1.0752, '1', 0.00224), {}, '1.0752 ± 0.0044'],
    ['a time, whose uncertainty has a unit of its own', measured(1662, 's', 46), {}, '27.7 min ± 90 s'],
    ['a time in a unit that was asked for', measured(126, 's', 55), { unit: 'min' }, '2.1 ± 1.8 min'],
    ['an interval of its own', measured(71.34, '°C', 0.6), { interval: [70.94, 73.11] }, '71.3 °C (70.9 to 73.2)'],
    ['an exact value', exact(3, 'W'), {}, '3 W'],
    ['an unknown uncertainty', unknown(0.812, 'W'), {}, '812 mW, uncertainty unknown'],
    ['scatter alone', { ...measured(61.2, '°C', 0.5), repeatabilityOnly: true }, {}, '61.2 ± 1.0 °C, repeatability only'],
  ] as const)('%s', (_what, quantity, options, text) => {
    expect(plain(printWithUncertainty(quantity, options))).toBe(text);
  });

  test.each([
    [measured(6.04, 'K', 0.45), '+6.0 ± 0.9 K'],
    [measured(-0.51, 'K', 0.2), '−0.51 ± 0.39 K'],
    [measured(0.0004, 'K/W', 0.06), '0.00 ± 0.12 K/W'],
    [exact(0, 'W'), '0 W'],
  ] as const)('a difference has its sign, what prints as zero has none: %o', (quantity, text) => {
    expect(plain(printWithUncertainty(quantity, { signed: true }))).toBe(text);
  });
});
