import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numeralWords } from '../../../src/words/stated/numeral-words.ts';
import { readStated, type Stated } from '../../../src/words/stated/read.ts';

describe('words/stated/numeral-words', () => {
  test.each([
    ['58.30', 'fifty-eight point three zero'],
    ['-0.05', 'minus zero point zero five'],
    ['−1,200', 'minus one thousand two hundred'],
    ['1234567890123456', 'one two three four five six seven eight nine zero one two three four five six'],
  ])('%s', (numeral, words) => {
    expect(numeralWords(numeral)).toBe(words);
  });

  test.each(['', 'x', '1e5', '.5', '1.', '--1'])('%j is no plain numeral', (text) => {
    expect(numeralWords(text)).toBeUndefined();
  });

  test('digits and words mean the same interval below a million', () => {
    const numerals = fc.tuple(fc.integer({ min: 0, max: 999_999 }), fc.integer({ min: 0, max: 3 }), fc.nat(999), fc.boolean());
    fc.assert(
      fc.property(
        numerals,
        fc.constantFrom('degrees', 'watts', 'minutes', 'percent'),
        ([whole, decimals, fraction, minus], unit) => {
          const plain = `${whole}${decimals === 0 ? '' : `.${String(fraction).padStart(3, '0').slice(0, decimals)}`}`;
          const numeral = `${minus ? '−' : ''}${plain}`;
          const digits = readStated(`${numeral} ${unit}`) as Stated;
          const words = readStated(`${numeralWords(numeral)} ${unit}`) as Stated;
          const meaning = ({ lower, upper, lowerClosed, upperClosed, nominal }: Stated) => [
            lower,
            upper,
            lowerClosed,
            upperClosed,
            nominal,
          ];
          expect(meaning(words)).toEqual(meaning(digits));
        },
      ),
      { numRuns: 2000, seed: 4 },
    );
  });

  test('a million is the same number in digits and words; the word says no digit below the millions', () => {
    const [digits, words] = [readStated('1,000,000') as Stated, readStated('one million') as Stated];
    expect(words.nominal).toBe(digits.nominal);
    expect([digits.lower, words.lower]).toEqual([999_999.5, 500_000]);
  });
});
