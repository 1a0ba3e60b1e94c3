import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cardinalAt, cardinalWords, PARTS } from '../../../src/words/stated/cardinal.ts';
import { tokenise } from '../../../src/words/stated/tokens.ts';
import { spellOut } from './rule-based-numbers.ts';

const VERBOSE = '%spellout-cardinal-verbose';
const SHORT = '%spellout-cardinal';

/** Every number below 2000, then all magnitudes with and without zeros between. */
const SAMPLE = [
  ...Array.from({ length: 2000 }, (_, value) => value),
  ...Array.from({ length: 1500 }, (_, index) => 2000 + index * 661),
  ...[1e4, 1e5, 1e6, 1e7, 1e9, 1e12].flatMap((power) => [
    power,
    power + 1,
    power + 20,
    power + 105,
    2 * power + 1300,
    3 * power + 12005,
  ]),
];

function read(words: string): number | undefined {
  const tokens = tokenise(words);
  const found = cardinalAt(tokens, 0);
  return found?.next === tokens.length ? found.value : undefined;
}

describe('words/stated/cardinal', () => {
  // Unicode CLDR 48.2, rbnf/en.json (npm cldr-rbnf): rule set %spellout-cardinal-verbose, its commas left out.
  test("says whole numbers as Unicode's CLDR does", () => {
    for (const value of SAMPLE) expect(cardinalWords(value)).toBe(spellOut(value, VERBOSE).replaceAll(',', ''));
  });

  // The same data: rule set %spellout-ordinal. A half and a quarter have words of their own.
  test("parts of one are named by Unicode's ordinals", () => {
    const ordinals = new Map(
      [3, 4, 5, 6, 7, 8, 9, 10, 100, 1000].map((parts) => [parts, spellOut(parts, '%spellout-ordinal').replace('one ', '')]),
    );
    const halves = ['half', 'halves', 'quarter', 'quarters'];
    const named = [...PARTS].filter(([word]) => !halves.includes(word)).map(([word, parts]) => [parts, word.replace(/s$/, '')]);
    expect(new Map(named as [number, string][])).toEqual(ordinals);
    for (const [, word] of named) expect([word, PARTS.get(`${word}s`)]).toEqual([word, PARTS.get(word as string)]);
    expect(halves.map((word) => PARTS.get(word))).toEqual([2, 2, 4, 4]);
  });

  test("reads whole numbers as Unicode's CLDR says them, with and without `and`, commas and hyphens", () => {
    for (const value of SAMPLE) {
      for (const set of [VERBOSE, SHORT]) {
        const words = spellOut(value, set);
        expect([words, read(words)]).toEqual([words, value]);
        expect(read(words.replaceAll('-', ' '))).toBe(value);
      }
    }
  });

  test('reads what it says', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 999_999_999_999_999 }), (value) => {
        expect(read(cardinalWords(value))).toBe(value);
      }),
      { numRuns: 1000, seed: 4 },
    );
  });

  test.each([
    ['a hundred', 100],
    ['a hundred and five', 105],
    ['a thousand', 1000],
    ['twelve hundred', 1200],
    ['nineteen hundred and eighty', 1980],
    ['nought', 0],
  ])('also reads %s', (words, value) => {
    expect(read(words)).toBe(value);
  });

  test.each(['hundred', 'a five', 'two three', 'zero hundred', 'five thousand million thousand', 'twenty-eleven'])(
    'does not read all of %s',
    (words) => {
      expect(read(words)).toBeUndefined();
    },
  );

  test.each([-1, 1.5, 1e15, Number.NaN])('refuses to say %d', (value) => {
    expect(() => cardinalWords(value)).toThrow(RangeError);
  });
});
