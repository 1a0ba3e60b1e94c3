import { describe, expect, test } from 'vitest';
import { counted, listed } from '../../src/figures/in-words.ts';

describe('figures/in-words', () => {
  test.each([
    [[], ''],
    [['fast'], 'fast'],
    [['fast', 'rated'], 'fast and rated'],
    [['fast', 'rated', 'slow'], 'fast, rated and slow'],
  ])('%j is listed as %j', (names, text) => {
    expect(listed(names)).toBe(text);
  });

  test('one is counted without the s that all other numbers have', () => {
    expect([0, 1, 2].map((count) => counted(count, 'gap'))).toEqual(['0 gaps', '1 gap', '2 gaps']);
  });
});
