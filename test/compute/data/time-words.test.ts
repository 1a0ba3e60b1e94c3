import { expect, test } from 'vitest';
import { timeWords } from '../../../src/compute/data/time-words.ts';
import { TIME_FORMATS } from '../../../src/intake/log.ts';

test('compute/data/time-words: a date written with dots is not called by the name of a standard that has none', () => {
  // ISO 8601-1 (2019) writes days as 2026-03-02; logs with 02.03.2026 are read under the same word of front matter.
  expect(timeWords('iso8601')).toBe('date and time');
  for (const format of TIME_FORMATS) expect(timeWords(format)).toMatch(/^[a-zA-Z0-9 -]+$/);
});
