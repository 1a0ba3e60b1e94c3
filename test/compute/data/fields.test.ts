import { describe, expect, it } from 'vitest';
import { encodingLabel } from '../../../src/compute/data/encoding.ts';
import { cleanedSchema, tableSchema } from '../../../src/compute/data/fields.ts';
import { tableFile } from '../../../src/compute/data/table-file.ts';
import type { TableLayout } from '../../../src/figures/table-layout.ts';

const COLUMNS = [
  { head: 'Test', name: 'test', unit: '' },
  { head: 'Result [s]', name: 'value', unit: 's' },
];
const form = (more: Partial<TableLayout> = {}): TableLayout => {
  return { columns: COLUMNS, rows: 3, delimiter: ';', decimal: ',', encoding: 'UTF-8', ...more };
};

describe('compute/data/fields', () => {
  it('has the value of a score as a number, with the decimal mark that the file has, and all else as text', () => {
    expect(tableSchema(form()).fields).toEqual([
      { name: 'Test', type: 'string', title: 'name of the test' },
      { name: 'Result [s]', type: 'number', decimalChar: ',', title: 'result of the repeat', unit: 's' },
    ]);
    expect(tableSchema(form({ decimal: '.' })).fields[1]).not.toHaveProperty('decimalChar');
  });

  it('tells rows of cleaned readings apart by their line of the log', () => {
    const { fields, primaryKey } = cleanedSchema([], {} as Parameters<typeof cleanedSchema>[1]);
    expect(fields.map(({ name, type, constraints }) => [name, type, constraints])).toEqual([
      ['time_s', 'number', { required: true }],
      ['log_line', 'integer', { required: true, unique: true }],
    ]);
    expect(primaryKey).toBe('log_line');
  });
});

describe('compute/data/encoding', () => {
  // Encoding Standard (WHATWG), "Names and labels".
  it.each([
    ['UTF-8 (every byte fits)', 'utf-8'],
    ['ASCII', 'utf-8'],
    ['windows-1252 (some byte is not UTF-8)', 'windows-1252'],
    ['UTF-16LE (byte order mark)', 'utf-16le'],
    ['', 'utf-8'],
  ])('%s is %s', (words, label) => {
    expect(encodingLabel(words)).toBe(label);
    expect(() => new TextDecoder(label)).not.toThrow();
  });
});

describe('compute/data/table-file', () => {
  const table = { kind: 'scores', file: 'larch/fast scores.csv', sha256: 'aa', bytes: 171_000 } as const;

  it('goes out under a plain name where all of its columns are read', () => {
    expect(tableFile({ ...table, form: form() }, 'runs/fast/data/')).toMatchObject({
      name: 'fast-scores.csv',
      path: 'runs/fast/data/fast-scores.csv',
      source: 'data/larch/fast scores.csv',
      note: '',
    });
  });

  it('stays with its author where it holds rows of other settings, unless he lets all of it go out', () => {
    const partly = form({ partly: true });
    expect(tableFile({ ...table, form: partly }, 'runs/fast/data/')).toMatchObject({
      path: null,
      note: 'not offered: it holds rows of other settings or runs',
    });
    const shared = form({ partly: true, shared: true });
    expect(tableFile({ ...table, form: shared }, 'runs/fast/data/')).toMatchObject({
      path: 'runs/fast/data/fast-scores.csv',
      note: '',
    });
  });

  it('stays with its author where a column is read by nothing, and the page says how many, not which', () => {
    const spare = form({ columns: [...COLUMNS, { head: 'host', name: null, unit: '' }] });
    expect(tableFile({ ...table, form: spare }, 'runs/fast/data/')).toMatchObject({
      path: null,
      note: 'not offered: it holds 1 column that nothing reads',
    });
  });
});
