import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseAccuracy } from '../../src/quantities/accuracy.ts';
import { isParseFailure } from '../../src/quantities/parse.ts';

describe('quantities/parse-accuracy', () => {
  const nothing = { ofReading: 0, absolute: 0, digits: 0, coverage: 'rectangular' };

  test.each([
    ['0.5 % + 2 digits', { ofReading: 0.005, digits: 2 }],
    ['0.5% + 2 digits', { ofReading: 0.005, digits: 2 }],
    ['± (0.5 % + 2 digits)', { ofReading: 0.005, digits: 2 }],
    ['0.5 % of reading + 1 digit', { ofReading: 0.005, digits: 1 }],
    ['5 mV + 3 counts', { absolute: 0.005, digits: 3, unit: 'V' }],
    ['± 0.5 °C', { absolute: 0.5, unit: 'K' }],
    ['± 0.5 K', { absolute: 0.5, unit: 'K' }],
    ['1 % of range 5 A', { absolute: 0.05, unit: 'A' }],
    ['1 % of full scale 20 V + 3 digits', { absolute: 0.2, digits: 3, unit: 'V' }],
    ['0.05 % + 1 % of range 500 mA', { ofReading: 0.0005, absolute: 0.005, unit: 'A' }],
    ['± 2 °C or 2 %, the larger', { ofReading: 0.02, absolute: 2, larger: true, unit: 'K' }],
    ['2 % or ± 2 °C, whichever is greater', { ofReading: 0.02, absolute: 2, larger: true, unit: 'K' }],
    ['± 1.5 dB(A)', { absolute: 1.5, unit: 'dB' }],
    ['± 0.5 °C (k=2)', { absolute: 0.5, unit: 'K', coverage: { k: 2 } }],
    ['0.5 % (standard)', { ofReading: 0.005, coverage: 'standard' }],
    ['0.5 % + 2 digits (95 %)', { ofReading: 0.005, digits: 2, coverage: { k: 1.96 } }],
  ])('%s', (text, expected) => {
    expect(parseAccuracy(text)).toEqual({ ...nothing, ...expected, text });
  });

  test.each([
    ['', 'no number', 0],
    ['good', 'no number at "good"', 0],
    ['0.5', '0.5 has no unit', 3],
    ['0,5 %', 'a comma in the number 0,5', 1],
    ['0 %', 'the limit 0 % is not above zero', 0],
    ['0.5 % + ', 'no number', 7],
    ['0.5 % + 2 dogits', 'unknown unit dogits', 10],
    ['0.5 % + 2 mV + 3 mA', 'limits in V and in A do not add up', 14],
    ['2 °C or 2 %', 'two limits without a word on which of them counts', 2],
    ['2 % or 3 %, the larger', 'the larger of two limits of one kind, or of sums', 7],
    ['2 % + 1 K or 3 K, the larger', 'the larger of two limits of one kind, or of sums', 13],
    ['± 0.5 °C (about)', '(about) does not say what the limits mean', 9],
    ['1 % of range', 'no number', 12],
    ['1 % of range 5', 'a range without a unit', 14],
    ['type Z class 1', 'unknown tolerance class type Z class 1', 0],
    ['Pt100 class X', 'unknown tolerance class Pt100 class X', 0],
  ])('%j is refused: %s', (text, failure, offset) => {
    const result = parseAccuracy(text);
    if (!isParseFailure(result)) throw new Error('not refused');
    expect(result).toMatchObject({ failure, offset });
    expect(result.expected).not.toBe('');
  });

  test('no text makes it throw, and every failure lies within the text', () => {
    const words = fc.array(
      fc.constantFrom(
        '0.5',
        '2',
        '%',
        ' ',
        '+',
        '±',
        'digits',
        'of range',
        'or',
        ', the larger',
        '°C',
        'mV',
        '(',
        ')',
        'k=2',
        'type K',
        'class 1',
      ),
      {
        maxLength: 8,
      },
    );
    fc.assert(
      fc.property(words, (drawn) => {
        const text = drawn.join('');
        const result = parseAccuracy(text);
        if (isParseFailure(result)) expect(result.offset).toBeLessThanOrEqual(text.length);
        else expect(result.ofReading + result.absolute + result.digits).toBeGreaterThan(0);
      }),
      { numRuns: 2000 },
    );
  });
});
