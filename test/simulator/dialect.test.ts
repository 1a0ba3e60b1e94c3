import { describe, expect, test } from 'vitest';
import { civil, clockOnly, type Dialect, elapsed, flags, numbers, withOffset, withoutOffset, write } from './dialect.ts';
import type { Reading } from './options.ts';

const ROWS: readonly Reading[] = [0, 2].map((at) => ({
  elapsed: at,
  die: 41.5,
  board: at === 0 ? Number.NaN : 30.2,
  room: 22,
  clock: 2.4e9,
  throttled: at === 2,
  voltage: 12,
  current: 0.5,
}));
const COLUMNS = [
  elapsed('s', 0),
  numbers('die [°C]', (r) => r.die, 1),
  numbers('board', (r) => r.board, 1, 'NA'),
  flags('limit', 'yes', 'no'),
];
const PLAIN: Dialect = { encoding: 'utf-8', newline: '\n', delimiter: ',', decimal: '.', columns: COLUMNS };

describe('simulator/dialect', () => {
  test('writes a header, one line a row, and the word for a lost reading', () => {
    expect(new TextDecoder().decode(write(ROWS, PLAIN))).toBe('s,die [°C],board,limit\n0,41.5,NA,no\n2,41.5,30.2,yes\n');
  });

  test('decimal commas, semicolons, CRLF, and a degree sign of one byte', () => {
    const bytes = write(ROWS, { ...PLAIN, encoding: 'windows-1252', newline: '\r\n', delimiter: ';', decimal: ',' });
    expect(new TextDecoder('windows-1252').decode(bytes)).toBe('s;die [°C];board;limit\r\n0;41,5;NA;no\r\n2;41,5;30,2;yes\r\n');
    expect(bytes.includes(0xb0)).toBe(true);
  });

  test('refuses what has no single byte', () => {
    const columns = [numbers('R [Ω]', (r) => r.current, 1)];
    expect(() => write(ROWS, { ...PLAIN, encoding: 'windows-1252', columns })).toThrow('no single byte for Ω');
  });

  test('a byte-order mark, a preamble, a row with its last field left out', () => {
    const bytes = write(ROWS, { ...PLAIN, encoding: 'utf-8 with mark', preamble: ['log of the bench'], ragged: 2 });
    expect([...bytes.slice(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
    expect(new TextDecoder().decode(bytes).split('\n').slice(0, 4)).toEqual([
      'log of the bench',
      's,die [°C],board,limit',
      '0,41.5,NA,no',
      '2,41.5,30.2',
    ]);
  });

  test('civil times in three forms, over midnight', () => {
    const start = Date.UTC(2026, 2, 9, 22, 59, 58);
    const cells = [withOffset, withoutOffset, clockOnly].map((form) => ROWS.map((row) => civil('t', start, 60, form).cell(row)));
    expect(cells).toEqual([
      ['2026-03-09T23:59:58.000+01:00', '2026-03-10T00:00:00.000+01:00'],
      ['2026-03-09 23:59:58', '2026-03-10 00:00:00'],
      ['23:59:58', '00:00:00'],
    ]);
    expect(withOffset(start, -210)).toBe('2026-03-09T19:29:58.000-03:30');
  });
});
