import { describe, expect, test } from 'vitest';
import type { Pair } from '../../../src/compute/published-state/match.ts';
import { printsDifferently, sameValue } from '../../../src/compute/published-state/same-value.ts';

/** A number as it was and is; what the functions do not look at is left out. */
function pair(was: object, is: object): Pair {
  const entry = { kind: 'value', unit: 'W', shown: '1 W', value: 1 };
  return { was: { ...entry, ...was }, is: { ...entry, ...is } } as unknown as Pair;
}

describe('compute/published-state/same-value', () => {
  test.each([
    [1, 1 + 0.9e-9, true],
    [1, 1 + 1.1e-9, false],
    [1 + 1.1e-9, 1, false],
    [-1, -1 - 0.9e-9, true],
    [-1, 1, false],
    [0, 0, true],
    [0, 1e-300, false],
  ])('%d and %d: the same to a part in 10⁹ of the larger: %s', (was, is, same) => {
    expect(sameValue(pair({ value: was }, { value: is }))).toBe(same);
  });

  test('in other units the same is the same', () => {
    expect(sameValue(pair({ value: 1200, unit: 'mW' }, { value: 1.2, unit: 'W' }))).toBe(true);
    expect(sameValue(pair({ value: 1200, unit: 'mW' }, { value: 1.3, unit: 'W' }))).toBe(false);
    expect(sameValue(pair({ value: 1, unit: 'no-unit' }, { value: 1, unit: 'W' }))).toBe(false);
  });

  test('blanks apart, what prints the same prints the same', () => {
    expect(printsDifferently(pair({ shown: '1.2\u00a0W' }, { shown: '1.2 W', value: 2 }))).toBe(false);
    expect(printsDifferently(pair({ shown: '1.2 W' }, { shown: '1.3 W' }))).toBe(true);
  });

  test('what the data did not give, or gives no longer, kept its old value: the words count', () => {
    const [untold, holds] = ['cannot be told', 'holds'].map((verdict) => ({ kind: 'stated', verdict }));
    const [longer, shorter] = [{ shown: 'more than 59.9 min' }, { shown: 'more than 40.0 min' }];
    expect(printsDifferently(pair({ ...untold, ...longer }, { ...untold, ...shorter }))).toBe(true);
    expect(printsDifferently(pair({ ...untold, ...longer }, { ...holds, shown: 'twelve minutes' }))).toBe(true);
    expect(printsDifferently(pair({ ...untold, ...longer }, { ...untold, ...longer }))).toBe(false);
  });

  test("in the author's own words, or another unit, it is the value that counts, and of a claim the verdict", () => {
    expect(printsDifferently(pair({ kind: 'stated', shown: 'about 1 W' }, { shown: 'some 1 W' }))).toBe(false);
    expect(printsDifferently(pair({ kind: 'stated', shown: 'about 1 W' }, { shown: 'some 2 W', value: 2 }))).toBe(true);
    const [holds, fails] = ['holds', 'fails'].map((verdict) => ({ kind: 'claim', verdict }));
    const gone = 'settles higher (this no longer holds)';
    expect(printsDifferently(pair({ ...holds, shown: 'settles higher' }, { ...fails, shown: gone }))).toBe(true);
    expect(printsDifferently(pair({ ...holds, shown: 'settles higher' }, { ...holds, shown: 'ends higher' }))).toBe(false);
    expect(printsDifferently(pair({ shown: '1 W' }, { shown: '1000 mW', value: 1000, unit: 'mW' }))).toBe(false);
  });
});
