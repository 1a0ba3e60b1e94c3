// The npm package csv-spectrum (2.0.0): CSV dialects, each with the records that a right reader finds.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readTable } from '../../src/intake/table.ts';

const folder = join(import.meta.dirname, '..', '..', 'node_modules', 'csv-spectrum');
// The records that the package gives for location_coordinates are of another file: it is looked at by itself below.
const names = readdirSync(join(folder, 'csvs'))
  .map((name) => name.replace(/\.csv$/, ''))
  .filter((name) => name !== 'location_coordinates');

describe('real: csv-spectrum', () => {
  it('has the dialects that this test was written for', () => {
    expect(names.length).toBeGreaterThanOrEqual(11);
  });

  it.each(names)('%s', (name) => {
    const expected = JSON.parse(readFileSync(join(folder, 'json', `${name}.json`), 'utf8')) as Record<string, string>[];
    const table = readTable(readFileSync(join(folder, 'csvs', `${name}.csv`)), `${name}.csv`);
    const records = table.rows.map((row) => Object.fromEntries(table.head.map((key, k) => [key, row.cells[k]])));
    // Line ends within a field are unified, and blanks around it are no part of it.
    const unified = expected.map((record) =>
      Object.fromEntries(Object.entries(record).map(([key, value]) => [key, value.replace(/\r\n/g, '\n').trim()])),
    );
    expect(records).toEqual(unified);
    expect(table.problems).toEqual([]);
  });

  it('keeps a quote in the middle of a field (location_coordinates)', () => {
    const table = readTable(readFileSync(join(folder, 'csvs', 'location_coordinates.csv')), 'a.csv');
    expect(table.head).toEqual(['Contact Phone Number', 'Location Coordinates', 'Cities', 'Counties']);
    expect(table.rows[0]!.cells[1]).toMatch(/^37.36'37\.8"N 121.2'17\.9"W$/);
    expect(table.rows[0]!.cells[3]).toBe('Stanislaus');
  });
});
