import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isParseFailure, type ParseOptions, parseQuantity } from '../../src/quantities/parse.ts';
import { standardUncertainty } from '../../src/quantities/uncertainty.ts';
import { expectClose, source } from './helpers.ts';

const room = source('run:larch-fast/ambient');

function read(text: string, options?: ParseOptions) {
  const quantity = parseQuantity(text, room, options);
  if (isParseFailure(quantity)) throw new Error(`${quantity.failure} at ${quantity.offset}`);
  return quantity;
}

describe('quantities/parse', () => {
  test.each([
    ['2.6 GHz', 2.6e9, 'Hz'],
    ['40 mV', 0.04, 'V'],
    ['-5 °C', -5, '°C'],
    ['−5 °C', -5, '°C'],
    ['+5°C', 5, '°C'],
    ['  85 °C  ', 85, '°C'],
    ['2.6e3 MHz', 2.6e9, 'Hz'],
    ['90 min', 5400, 's'],
    ['50 %', 0.5, '1'],
    ['4.75 K/W', 4.75, 'K/W'],
    ['12 W/(m² K)', 12, 'W/(m²·K)'],
    ['9 mV', 0.009, 'V'],
  ])('%s is exact where no uncertainty is stated', (text, value, unit) => {
    expect(read(text)).toEqual({ value, unit, parts: [] });
  });

  // JCGM 100:2008: limits are rectangular 4.3.7; expanded uncertainty 4.3.3; normal intervals 4.3.4; brackets 7.2.2.
  test.each([
    ['22.4 ± 0.5 °C', 0.5 / Math.sqrt(3)],
    ['22.4 +- 0.5 °C', 0.5 / Math.sqrt(3)],
    ['22.4 +/- 0.5 °C', 0.5 / Math.sqrt(3)],
    ['22.4±0.5°C', 0.5 / Math.sqrt(3)],
    ['(22.4 ± 0.5) °C', 0.5 / Math.sqrt(3)],
    ['22.4 °C ± 0.5 °C', 0.5 / Math.sqrt(3)],
    ['22.4 °C ± 0.5 K', 0.5 / Math.sqrt(3)],
    ['22.4 ± 0.5 °C (k=2)', 0.25],
    ['22.4 ± 0.5 °C (k = 3)', 0.5 / 3],
    ['22.4 ± 0.5 °C (95 %)', 0.5 / 1.96],
    ['22.4 ± 0.5 °C (95%)', 0.5 / 1.96],
    ['22.4 ± 0.5 °C (99 %)', 0.5 / 2.576],
    ['(22.4 ± 0.5) °C (k=2)', 0.25],
    ['22.4 ± 0.5 °C (standard)', 0.5],
    ['22.4(5) °C', 0.5],
    ['22.4(12) °C', 1.2],
  ])('%s', (text, u) => {
    const quantity = read(text);
    expect(quantity).toMatchObject({ value: 22.4, unit: '°C', parts: [{ source: room }], step: 0.1 });
    expectClose(standardUncertainty(quantity)!, u, 1e-12);
  });

  test('brackets of a unit are no coverage', () => {
    expectClose(standardUncertainty(read('24.5 ± 0.5 dB(A)'))!, 0.5 / Math.sqrt(3), 1e-12);
    expectClose(standardUncertainty(read('(24.5 ± 0.5) dB(A) (k=2)'))!, 0.25, 1e-12);
  });

  test('limits and step are in the canonical unit, without the offset of a scale', () => {
    expectClose(standardUncertainty(read('72 ± 9 °F'))!, 5 / Math.sqrt(3), 1e-12);
    expectClose(read('72 ± 9 °F').step!, 5 / 9, 1e-12);
    expectClose(standardUncertainty(read('12 V ± 5 %'))!, 0.6 / Math.sqrt(3), 1e-12);
    expectClose(standardUncertainty(read('5 V ± 20 mV'))!, 0.02 / Math.sqrt(3), 1e-12);
    expectClose(standardUncertainty(read('50 % ± 2 %'))!, 0.02 / Math.sqrt(3), 1e-12);
    expect(read('2.60 ± 0.01 GHz').step).toBe(1e7);
    expectClose(read('1.2e2 ± 5 W').step!, 10, 1e-12);
  });

  // JCGM 100:2008, 7.2.2: m_S = 100.021 47(35) g is a standard uncertainty of 0.35 mg.
  test('digits in brackets count the last place', () => {
    expectClose(standardUncertainty(read('100.02147(35) g'))!, 0.35e-6, 1e-9);
  });

  test('a measured quantity without a stated uncertainty', () => {
    expect(read('22.4 °C', { unstated: 'unknown' })).toEqual({ value: 22.4, unit: '°C', parts: null, step: 0.1 });
  });

  test('an absolute temperature in kelvin, where a temperature is meant', () => {
    expectClose(read('300 K', { kind: 'temperature' }).value, 26.85, 1e-12);
    expect(read('300 K')).toMatchObject({ value: 300, unit: 'K' });
    expect(read('5 °C', { kind: 'difference' })).toMatchObject({ value: 5, unit: 'K' });
    expect(read('12 points', { kind: 'score' })).toMatchObject({ value: 12, unit: 'points' });
  });

  test('a bare number where a ratio may stand', () => {
    expect(read('0.95', { bare: true })).toEqual({ value: 0.95, unit: '1', parts: [] });
    expectClose(standardUncertainty(read('0.95 ± 0.03', { bare: true }))!, 0.03 / Math.sqrt(3), 1e-12);
  });

  test.each([
    ['', 'no number', 0],
    ['warm', 'no number at "warm"', 0],
    ['22', '22 has no unit', 2],
    ['22.4 ± 0.5', '22.4 ± 0.5 has no unit', 10],
    ['22,4 °C', 'a comma in the number 22,4', 2],
    ['1 000 W', 'a blank inside a number', 1],
    ['1.2.3 V', 'a number that ends at a point or has two: 1.2.3 V', 3],
    ['22. °C', 'a number that ends at a point or has two: 22. °C', 2],
    ['.5 V', 'no number at ".5 V"', 0],
    ['1e400 V', 'the number 1e400 is too large', 0],
    ['1e308 GHz', '1e308 GHz is too large', 0],
    ['22.4 Wats', 'unknown unit Wats', 5],
    ['22.4 ± °C', 'no number at "°C"', 7],
    ['22.4 ± 0 °C', 'the uncertainty is not above zero', 7],
    ['22.4 ± -1 °C', 'the uncertainty is not above zero', 7],
    ['22.4(0) °C', 'the uncertainty is not above zero', 4],
    ['22.4(0.5) °C', 'no digits in the brackets at "(0.5) °C"', 4],
    ['22.4 ± 0.5 °C (97 %)', '(97 %) does not say what ± means', 14],
    ['22.4 ± 0.5 °C (k=0)', '(k=0) does not say what ± means', 14],
    ['22.4 ± 0.5 °C (about)', '(about) does not say what ± means', 14],
    ['22.4 °C (k=2)', 'a coverage is stated, but no ± before it', 7],
    ['22.4(5) °C (k=2)', 'a coverage is stated, but no ± before it', 10],
    ['22 °C ± 5 %', 'a share of a Celsius temperature', 9],
    ['0 V ± 5 %', 'a share of nothing', 7],
    ['5 V ± 20 mA', 'limits in A of a value in V', 8],
    ['5 V ± 20', '5 V ± 20 has no unit', 8],
    ['5 foo ± 20 mV', 'unknown unit foo', 2],
    ['-300 °C', '-300 °C is below absolute zero', 0],
    ['-1 K', '-1 K is below absolute zero', 0],
  ])('%j is refused: %s', (text, failure, offset) => {
    const result = parseQuantity(text, room, text === '-1 K' ? { kind: 'temperature' } : {});
    if (!isParseFailure(result)) throw new Error('not refused');
    expect(result).toMatchObject({ failure, offset });
    expect(result.expected).not.toBe('');
  });

  test('a failure names the nearest unit', () => {
    expect(parseQuantity('2.6 ghz', room)).toMatchObject({ expected: 'did you mean GHz?' });
    expect(parseQuantity('2.6 zorkmids', room)).toMatchObject({ expected: 'a unit such as °C, K, s, Hz, A, V, W or J' });
  });

  test('no text makes it throw, and every failure lies within the text', () => {
    const characters = fc.array(fc.constantFrom(...'0123456789.,eE+-−± ()%kKVWAHz°C/·=µ²'), { maxLength: 16 });
    fc.assert(
      fc.property(characters, fc.constantFrom('', ' °C', '(k=2)', ' V ± 2 %'), (drawn, tail) => {
        const text = drawn.join('') + tail;
        const result = parseQuantity(text, room);
        if (isParseFailure(result)) expect(result.offset).toBeLessThanOrEqual(text.length);
        else expect(Number.isFinite(result.value)).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('quantities/parse: what doubles cannot carry through', () => {
  test.each(['1e300 W', '5 ± 1e200 W', '1e-300 W', '-1e180 V'])('refuses %s', (text) => {
    expect(parseQuantity(text, source('test'))).toMatchObject({ failure: expect.stringMatching(/ is too (large|small)$/) });
  });
});
