import { describe, expect, it } from 'vitest';
import { readTable } from '../../src/intake/table.ts';
import { bytes } from './declare.ts';

describe('intake/table', () => {
  const text = 'test;repeat;value;unit\n\naes;1;1,5;MB/s\nzip;1;2,5\n"a;b";2;3,5;MB/s;\n';
  const table = readTable(bytes(text), 'data/s.csv');

  it('reads head, rows with lines, and numbers', () => {
    expect(table.head).toEqual(['test', 'repeat', 'value', 'unit']);
    expect(table.rows).toEqual([
      { line: 3, cells: ['aes', '1', '1,5', 'MB/s'] },
      { line: 5, cells: ['a;b', '2', '3,5', 'MB/s'] },
    ]);
    expect(table.rows.map((row) => table.number(row.cells[2]!))).toEqual([1.5, 3.5]);
  });

  it('locates cells and rows that do not fit', () => {
    expect(table.placeOf(table.rows[1]!, 2)).toEqual({ file: 'data/s.csv', line: 5, column: 9, endLine: 5, endColumn: 12 });
    expect(table.problems).toMatchObject([
      { severity: 'error', rule: 'field-count', place: { line: 4, column: 1 }, found: 'the row has 3 fields, the header 4' },
    ]);
  });

  it('reports stray quotes and an empty file', () => {
    expect(readTable(bytes('a,b\n"x,1\ny,2\n'), 'data/s.csv')).toMatchObject({
      rows: [{ line: 3 }],
      problems: [{ rule: 'line-damaged', place: { line: 2 } }],
    });
    expect(readTable(bytes(' \n'), 'data/s.csv')).toMatchObject({ head: [], rows: [], problems: [{ rule: 'empty-file' }] });
    expect(readTable(bytes('a,b\n'), 'data/s.csv')).toMatchObject({ head: ['a', 'b'], rows: [], problems: [] });
  });

  it('shows what nobody sees by its name, with a warning at its cell', () => {
    const hidden = readTable(bytes('test,va\u200flue\n\u202eses,7\u200b1\n'), 'data/s.csv');
    expect(hidden).toMatchObject({ head: ['test', 'va⟨U+200F⟩lue'], rows: [{ cells: ['⟨U+202E⟩ses', '7⟨U+200B⟩1'] }] });
    expect(hidden.number(hidden.rows[0]!.cells[1]!)).toBeNaN();
    expect(hidden.problems.map(({ severity, rule, place, found }) => [severity, rule, place.line, place.column, found])).toEqual([
      [
        'warning',
        'hidden-character',
        1,
        6,
        'this cell holds a character that turns the order of text round (U+200F); it is shown by its name',
      ],
      [
        'warning',
        'hidden-character',
        2,
        1,
        'this cell holds a character that turns the order of text round (U+202E); it is shown by its name',
      ],
      [
        'warning',
        'hidden-character',
        2,
        6,
        'this cell holds a character that has no width, next to a digit (U+200B); it is shown by its name',
      ],
    ]);
  });
});
