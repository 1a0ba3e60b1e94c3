// Whatever the bytes: nothing throws, every line is accounted for, and no number appears that is not in the file.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inspect } from '../../src/intake/inspect.ts';
import { read } from '../../src/intake/read.ts';
import { reporterFor } from '../../src/intake/report/report.ts';
import { refuseForm } from '../../src/intake/rows/form.ts';
import { findRows } from '../../src/intake/rows/rows.ts';
import { openSheet } from '../../src/intake/sheet/open.ts';
import { isBlankRecord } from '../../src/intake/sheet/structure.ts';
import { readTable } from '../../src/intake/table.ts';
import { channel, declare, fixture } from './declare.ts';

const names = readdirSync(join(import.meta.dirname, '..', 'fixtures', 'intake')).filter((name) => name.endsWith('.csv'));

/** Lines of the file that stand nowhere: neither row, nor set aside, nor header, preamble, units, footer, blank, or repeated header. */
function unaccounted(bytes: Uint8Array): number {
  const sheet = openSheet(bytes, 'data/a.csv');
  const result = read(bytes, declare([]), 'data/a.csv');
  if (refuseForm(sheet) || !result.log) return 0;
  const { structure, records } = sheet;
  const rows = findRows(sheet, reporterFor(sheet));
  const within = (from: number, to: number) => Array.from({ length: Math.max(0, to - from) }, (_, k) => from + k);
  const above = within(0, structure.first).length;
  const below = within(structure.end, records.count).length;
  const aside = result.log.setAside.filter(({ column }) => column === undefined).length;
  return records.count - (above + below + rows.blank + rows.marks + rows.repeatedHeaders + aside + result.log.rows);
}

function tryAll(bytes: Uint8Array): void {
  const soc = channel('soc', 'temperature', 'soc_c');
  for (const time of [{}, { time: { column: 't_s' } }])
    read(bytes, declare([soc, channel('p', 'power', 'column 2', { unit: 'W' })], time), 'data/a.csv');
  inspect(bytes, 'data/a.csv');
  readTable(bytes, 'data/a.csv');
  expect(unaccounted(bytes)).toBe(0);
}

describe('intake: every line is accounted for', () => {
  it.each(names)('%s', (name) => {
    expect(unaccounted(fixture(name))).toBe(0);
  });

  it('in fixtures cut anywhere', () => {
    fc.assert(
      fc.property(fc.constantFrom(...names), fc.double({ min: 0, max: 1, noNaN: true }), (name, share) => {
        const whole = fixture(name);
        tryAll(whole.subarray(0, Math.floor(whole.length * share)));
      }),
      { numRuns: 150 },
    );
  });

  it('in fixtures with bytes overwritten', () => {
    fc.assert(
      fc.property(fc.constantFrom(...names), fc.array(fc.tuple(fc.nat(), fc.nat(255)), { maxLength: 6 }), (name, changes) => {
        const copy = Uint8Array.from(fixture(name));
        for (const [at, value] of changes) if (copy.length > 0) copy[at % copy.length] = value;
        tryAll(copy);
      }),
      { numRuns: 150 },
    );
  });

  it('in random bytes and random tables', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 400 }), tryAll), { numRuns: 150 });
    const cell = fc.constantFrom('1', '2.5', 'NA', '', '"', 'a', '10:00:00', '2026-01-05', '1,5', '0x1', '5 V');
    const table = fc.array(fc.array(cell, { maxLength: 5 }), { maxLength: 12 });
    fc.assert(
      fc.property(table, fc.constantFrom(',', ';', '\t', ' '), fc.constantFrom('\n', '\r\n'), (rows, delimiter, end) => {
        tryAll(new TextEncoder().encode(rows.map((row) => row.join(delimiter)).join(end)));
      }),
      { numRuns: 150 },
    );
  });

  it('counts blank records as blank', () => {
    expect(isBlankRecord([''])).toBe(true);
    expect(isBlankRecord(['', ''])).toBe(false);
  });
});
