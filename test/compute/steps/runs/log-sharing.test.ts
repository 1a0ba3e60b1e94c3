import { describe, expect, it } from 'vitest';
import { sharedAsOf, unreadText } from '../../../../src/compute/steps/runs/log-sharing.ts';

const NOTHING = { columns: 0, lines: 0, cells: 0 };
const HOST = { ...NOTHING, columns: 1 };

describe('compute/steps/runs/log-sharing', () => {
  it('offers a log as it came only where all of it is read, unless its author says otherwise', () => {
    expect(sharedAsOf(undefined, NOTHING)).toBe('as it came');
    for (const unread of [HOST, { ...NOTHING, lines: 1 }, { ...NOTHING, cells: 1 }]) {
      expect(sharedAsOf(undefined, unread)).toBe('cleaned only');
      expect(sharedAsOf({}, unread)).toBe('cleaned only');
      expect(sharedAsOf({ share: 'as it came' }, unread)).toBe('as it came');
    }
  });

  it('follows the author', () => {
    const place = { file: 'content/runs/a.md', line: 1, column: 1 };
    expect(sharedAsOf({ share: 'cleaned only' }, NOTHING)).toBe('cleaned only');
    expect(sharedAsOf({ share: 'digest only' }, HOST)).toBe('digest only');
    expect(sharedAsOf({ redacted: { file: 'b.csv', place } }, HOST)).toBe('redacted');
    expect(sharedAsOf({ elsewhere: 'https://files.example/a.csv' }, NOTHING)).toBe('elsewhere');
    expect(sharedAsOf({ elsewhere: 'https://files.example/a.csv', share: 'digest only' }, NOTHING)).toBe('elsewhere');
  });

  it('counts what is not read, and tells nothing of it', () => {
    expect(unreadText(NOTHING)).toBe('');
    expect(unreadText(HOST)).toBe('1 column that no channel reads');
    expect(unreadText({ columns: 2, lines: 1, cells: 3 })).toBe(
      '2 columns that no channel reads, 1 line that is not a row of readings and 3 cells with words in place of a reading',
    );
  });
});
