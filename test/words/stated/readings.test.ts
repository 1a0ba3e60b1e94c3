import { describe, expect, test } from 'vitest';
import { isUnread, readStated } from '../../../src/words/stated/read.ts';
import { READINGS } from '../../../src/words/stated/readings.ts';
import { readCases } from './corpus.ts';

const PHRASES = new Set(readCases().map(({ phrase }) => phrase));

describe('words/stated/readings', () => {
  test.each(READINGS)('$name: its examples are in the corpus and read without a hedge', ({ examples, meaning }) => {
    expect(meaning).toMatch(/^[A-Z].*[.]$/);
    for (const example of examples) {
      const read = readStated(example);
      const hedge = isUnread(read) ? read.unread : read.hedge === 'between' ? undefined : read.hedge;
      expect([example, hedge, PHRASES.has(example)]).toEqual([example, undefined, true]);
    }
  });
});
