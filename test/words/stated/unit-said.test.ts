import { describe, expect, test } from 'vitest';
import { tokenise } from '../../../src/words/stated/tokens.ts';
import { unitAt } from '../../../src/words/stated/unit-said.ts';

/** The unit behind the first word or number of a text, and how many tokens it takes. */
function unitBehind(text: string, after: 'digits' | 'words' = 'digits'): [string, number] | null {
  const found = unitAt(tokenise(text), 1, after);
  return found ? [found.unit.spelling, found.next - 1] : null;
}

describe('words/stated/unit-said', () => {
  test('the sign of a multiple is one behind digits, and not between two numbers, where it multiplies them', () => {
    expect(unitBehind('2 ×')).toEqual(['1', 1]);
    expect(unitBehind('2 × faster')).toEqual(['1', 1]);
    expect(unitBehind('2 × faster than 3')).toEqual(['1', 1]);
    expect(unitBehind('2 × 3')).toBeNull();
    expect(unitBehind('two ×', 'words')).toBeNull();
    expect(unitBehind('two times', 'words')).toEqual(['1', 1]);
    expect(unitBehind('2 time')).toBeNull();
  });

  test('takes the longest unit that is known', () => {
    expect(unitBehind('2 watts')).toEqual(['W', 1]);
    expect(unitBehind('2 kelvin per watt')).toEqual(['K/W', 3]);
    expect(unitBehind('2 watts per person')).toEqual(['W', 1]);
    expect(unitBehind('2 degrees Celsius')).toEqual(['°C', 2]);
  });

  test('a symbol of one letter is one behind digits only, since it may be a word', () => {
    expect(unitBehind('2 A')).toEqual(['A', 1]);
    expect(unitBehind('two A', 'words')).toBeNull();
  });
});
