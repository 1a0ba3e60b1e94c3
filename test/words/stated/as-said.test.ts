import { describe, expect, test } from 'vitest';
import { isUnread, readStated } from '../../../src/words/stated/read.ts';
import { suggest } from '../../../src/words/stated/suggest.ts';

describe('words/stated/as-said', () => {
  test.each([
    ['half the power', 0.75, 'three quarters of the power'],
    ['twice the power', 0.75, 'three quarters of the power'],
    ['three times the power', 0.5, 'half the power'],
    ['three quarters of the power', 1.25, 'one and a quarter times the power'],
    ['half as fast', 1.4, 'one and a half times as fast'],
    ['twice as fast', 1.18, '1.2 times as fast'],
    ['half as much again', 1.2, 'a fifth as much again'],
    ['a third of the clock', 0.9, 'nine tenths of the clock'],
    ['halved', 0.7, '0.7 times'],
    ['a third less', 1.2, 'a fifth more'],
  ])('%s, and the data says %d', (words, value, expected) => {
    const said = readStated(words, '1');
    expect(isUnread(said) ? said.unread : suggest(said, value, '1')).toBe(expected);
  });
});
