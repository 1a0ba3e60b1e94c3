import { describe, expect, it } from 'vitest';
import { plainWord, wordsOf } from '../../src/search/terms.ts';

describe('search/terms', () => {
  it.each([
    ['It reached 71.3 °C.', ['It', 'reached', '71.3', '°C']],
    ['0.5 % + 2 digits', ['0.5', '%', '2', 'digits']],
    ['steady_temperature, in K/W', ['steady', 'temperature', 'in', 'K', 'W']],
    ['larch-fast', ['larch', 'fast']],
    ['“quoted”, (put in brackets); 1,5 and 2.', ['quoted', 'put', 'in', 'brackets', '1,5', 'and', '2']],
    ['a\u00a0b', ['a', 'b']],
    ['…', []],
  ])('%s', (text, words) => {
    expect(wordsOf(text)).toEqual(words);
  });

  it('compares without case and accents', () => {
    expect(plainWord('Fällboard')).toBe('fallboard');
    expect(plainWord('GHz')).toBe('ghz');
  });
});
