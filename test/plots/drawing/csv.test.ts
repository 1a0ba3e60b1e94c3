import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { csv, guardNote } from '../../../src/plots/drawing/csv.ts';

describe('plots/drawing/csv', () => {
  test('lines end with CRLF; commas, quotes and line breaks are quoted (RFC 4180, 2)', () => {
    expect(
      csv([
        ['a', 'b,c', 'd"e'],
        ['f\ng', 1.5, 0.1 + 0.2],
      ]),
    ).toBe('a,"b,c","d""e"\r\n"f\ng",1.5,0.3\r\n');
  });

  test('another reader reads back what was written', () => {
    const cell = fc.string().filter((text) => text.trim() !== '' && guardNote(csv([[text]])) === '');
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 8 }), (rows) => {
        const { data } = Papa.parse(csv(rows), { delimiter: ',', newline: '\r\n', skipEmptyLines: true });
        expect(data).toEqual(rows);
      }),
    );
  });

  test('numbers are given to ten significant digits, so that binary noise of a conversion does not show', () => {
    expect(csv([[344.65 - 273.15, 2.4e9, -0.1234567890123]])).toBe('71.5,2400000000,-0.123456789\r\n');
  });

  test.each([
    ['=1+1', "'=1+1"],
    ['=cmd|calc', "'=cmd|calc"],
    [' =HYPERLINK("x")', `"' =HYPERLINK(""x"")"`],
    ['+SUM(A1)', "'+SUM(A1)"],
    ['-2+3', "'-2+3"],
    ['@import', "'@import"],
    ['\tx', "'\tx"],
    ['\rx', `"'\rx"`],
    ['＝1', "'＝1"],
    ['-', "'-"],
  ])('text that a spreadsheet would run is guarded, and that is said: %j', (text, written) => {
    expect(csv([['a', text]])).toBe(`a,${written}\r\n`);
    expect(guardNote(csv([['a', text]]))).toContain('apostrophe');
    expect(guardNote(csv([[text, 'a']]))).toContain('apostrophe');
  });

  test.each(['-5', '+5.5', '-.5e-3', '-1.', '−5 K', "it's", "'tis", 'a=b', '5-3', ''])('and %j stays as it is', (text) => {
    expect(csv([[text, -5]])).toBe(`${text},-5\r\n`);
    expect(guardNote(csv([[text, -5]]))).toBe('');
  });
});
