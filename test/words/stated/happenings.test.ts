import { describe, expect, test } from 'vitest';
import { isUnread, readStated } from '../../../src/words/stated/read.ts';

function countsHappenings(words: string): boolean | undefined {
  const said = readStated(words);
  return isUnread(said) ? undefined : (said.counts ?? false);
}

describe('words/stated/happenings', () => {
  test.each([
    '2 restarts',
    '3 unplanned reboots',
    '1 crash',
    'one restart',
    '2 hangs in the first hour',
    '1 restart during the load',
    '2 hangs detected',
    'once',
  ])('%s counts happenings', (words) => {
    expect(countsHappenings(words)).toBe(true);
  });

  test.each(['2 crash tests', '2 crash-tests', '2 restart attempts', '1 restart attempt', '2 restarts per hour', '2 runs'])(
    '%s counts none',
    (words) => {
      expect(countsHappenings(words)).toBe(false);
    },
  );
});
