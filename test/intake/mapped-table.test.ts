import { describe, expect, it } from 'vitest';
import { mapTable } from '../../src/intake/mapped-table.ts';
import { readTable } from '../../src/intake/table.ts';
import type { TableForm, TableMapping } from '../../src/intake/table-mapping.ts';
import { bytes } from './declare.ts';

const PLACE = { file: 'content/runs/x.md', line: 9, column: 3 };
const FORM: TableForm = {
  kind: 'scores',
  needed: ['test', 'value', 'unit', 'better'],
  optional: ['repeat', 'error'],
  columns: {},
  wide: { head: 'test', cell: 'value' },
  unitOf: { cell: 'value', unit: 'unit' },
};
const column = (name: string, ...heads: string[]) => ({ name, heads, place: PLACE });
const mapped = (text: string, mapping?: TableMapping) => mapTable(readTable(bytes(text), 'data/s.csv'), mapping, FORM);
const rows = ({ table }: ReturnType<typeof mapTable>) => table.rows.map(({ line, cells }) => [line, ...cells].join('|'));

const LONG = 'Benchmark;Setting;Result [MB/s];Pass\nWide copy;1900;10,5;1\nWide copy;2400;12,5;1\nSort;1900;3;1\n';

describe('intake/mapped-table', () => {
  it('without a mapping gives the table itself', () => {
    const { table, readAs, partly } = mapped('test,value,note\ncopy,1,x\n');
    expect(table.heads).toBeUndefined();
    expect([readAs, partly]).toEqual([['test', 'value', null], false]);
  });

  it('takes the unit of a wide or repeated table cell by cell; a bare head beside units is no spot', () => {
    const wideForm = { head: 'spot', cell: 'reading' };
    const form: TableForm = { kind: 'surface', needed: ['spot', 'reading'], optional: [], columns: {}, wide: wideForm };
    const made = (text: string, mapping: TableMapping) => mapTable(readTable(bytes(text), 'data/s.csv'), mapping, form);
    const wide = made('run,cpu [°C],ssd [°F]\n7,60.1,140.2\n', { layout: 'wide' });
    expect([wide.table.head, rows(wide), wide.readAs]).toEqual([
      ['spot', 'reading'],
      ['2|cpu|60.1 °C', '2|ssd|140.2 °F'],
      [null, 'reading', 'reading'],
    ]);
    const alike = made('cpu [°C],ssd [°C]\n60.1,51.2\n', { layout: 'wide' });
    expect([alike.table.head, rows(alike)]).toEqual([
      ['spot', 'reading [°C]'],
      ['2|cpu|60.1', '2|ssd|51.2'],
    ]);
  });

  it('reads the first column of a name only', () => {
    expect(mapped('test,value,value (private),error\ncopy,1,2,3\n').readAs).toEqual(['test', 'value', null, 'error']);
  });

  it('renames columns, takes the rows of one setting and the unit of the head, and keeps places', () => {
    const made = mapped(LONG, {
      columns: [column('test', 'Benchmark'), column('value', 'Result [MB/s]'), column('repeat', 'Pass')],
      rows: { column: 'Setting', value: '1900.0', place: PLACE },
      tests: { 'Wide copy': { better: 'higher' }, Sort: { better: 'lower', unit: 's' } },
    });
    expect(made.problems).toEqual([]);
    expect(made.table.head).toEqual(['test', 'value', 'repeat', 'better', 'unit']);
    expect(made.table.heads).toEqual(['Benchmark', 'Result [MB/s]', 'Pass', '', '']);
    expect(rows(made)).toEqual(['2|Wide copy|10,5|1|higher|MB/s', '4|Sort|3|1|lower|s']);
    expect(made.readAs).toEqual(['test', 'rows', 'value', 'repeat']);
    expect(made.partly).toBe(true);
    expect(made.table.placeOf(made.table.rows[1]!, 1)).toMatchObject({ line: 4, column: 11 });
  });

  it('makes a wide table long: a column a test, a row a repeat; columns of words are no tests', () => {
    const made = mapped('Pass,Copy [MB/s],Sort [s],Remark\n1,10,3.5,warm\n2,11,NA,\n', {
      layout: 'wide',
      columns: [column('repeat', 'Pass')],
      tests: { Copy: { better: 'higher' }, Sort: { better: 'lower' } },
    });
    expect(made.table.head).toEqual(['repeat', 'test', 'value', 'better', 'unit']);
    expect(rows(made)).toEqual(['2|1|Copy|10|higher|MB/s', '3|2|Copy|11|higher|MB/s', '2|1|Sort|3.5|lower|s']);
    expect(made.readAs).toEqual(['repeat', 'value', 'value', null]);
    expect(made.table.placeOf(made.table.rows[2]!, 2)).toMatchObject({ line: 2, column: 6 });
  });

  it('takes several columns of values as repeats', () => {
    const made = mapped('test,unit,Run 1,Run 2\nCopy,MB/s,10,11\n', { columns: [column('value', 'Run 1', 'Run 2')] });
    expect(made.table.head).toEqual(['value', 'test', 'unit', 'repeat']);
    expect(rows(made)).toEqual(['2|10|Copy|MB/s|Run 1', '2|11|Copy|MB/s|Run 2']);
  });

  it('translates words, whole cells only and in any case, and fills what every row has', () => {
    const made = mapped('test,value,Dir\nCopy,1,UP\nUp there,2,up\n', {
      columns: [column('better', 'Dir')],
      words: { up: 'higher' },
      everyRow: { unit: 'points' },
    });
    expect(rows(made)).toEqual(['2|higher|Copy|1|points', '3|higher|Up there|2|points']);
  });

  it('says which column or setting is not there, with what was probably meant', () => {
    expect(mapped(LONG, { columns: [column('test', 'Benchmrk')] }).problems).toMatchObject([
      { rule: 'table-head', place: PLACE, remedy: 'did you mean `Benchmark`?' },
    ]);
    expect(mapped(LONG, { rows: { column: 'Setting', value: '190', place: PLACE } }).problems).toMatchObject([
      { rule: 'table-rows', found: 'no row of data/s.csv has `190` in the column `Setting`', expected: 'one of `1900`, `2400`' },
    ]);
    expect(mapped(LONG, { rows: { column: 'Clock', value: '1900', place: PLACE } }).problems).toMatchObject([
      { rule: 'table-head' },
    ]);
  });
});
