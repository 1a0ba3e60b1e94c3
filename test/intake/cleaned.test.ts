import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { cleanedCsv, cleanedNames } from '../../src/intake/cleaned.ts';
import type { Log, LogDeclaration } from '../../src/intake/log.ts';
import { read } from '../../src/intake/read.ts';
import { logOf } from '../figures/build.ts';
import { bytes, channel, declare } from './declare.ts';

/** What reads a cleaned table: every channel by its own name, in its canonical unit. */
function declarationOf({ channels }: Log): LogDeclaration {
  const names = cleanedNames(channels);
  const columns = channels.map(({ name, quantity, unit }) => channel(name, quantity, name, { unit, unitReason: 'canonical' }));
  return declare(columns, { time: { column: names.time, format: 'elapsed', unit: 's' } });
}

/** Any double, missing readings among them; none that a log could not hold. */
const reading = fc.oneof(
  { weight: 5, arbitrary: fc.double({ noNaN: true, noDefaultInfinity: true }) },
  { weight: 2, arbitrary: fc.integer({ min: -2000, max: 2000 }).map((tenths) => tenths / 10) },
  { weight: 1, arbitrary: fc.constantFrom(Number.NaN, -0, 5e-324, 1.7976931348623157e308) },
);
const rows = fc.array(fc.tuple(fc.integer({ min: 1, max: 90_000 }), reading, reading, fc.nat(7)), { minLength: 1, maxLength: 30 });

function sketch(table: readonly (readonly [number, number, number, number])[]): Log {
  let at = 0;
  const seconds = table.map(([step], row) => {
    if (row > 0) at += step;
    return at / 1000;
  });
  return logOf(seconds, {
    soc: { quantity: 'temperature', values: table.map(([, soc]) => soc) },
    input: { quantity: 'power', values: table.map(([, , input]) => input) },
    throttled: { quantity: 'throttle_flag', values: table.map(([, , , flag]) => flag) },
  });
}

describe('intake/cleaned', () => {
  it('is a header, one line a kept row, and the line of the log that it came from', () => {
    const log = read(
      bytes('Log of an invented box\nt [ms];Temp [°F];P [mW]\n0;32,0;5000,0\n1000;212,0;NA\n2000;oops\n3000;50,0;5100,5\n'),
      declare([channel('soc', 'temperature', 'Temp [°F]'), channel('input', 'power', 'P [mW]')]),
      'data/a.csv',
    ).log!;
    expect(cleanedCsv(log)).toBe('time_s,soc,input,log_line\r\n0,0,5,3\r\n1,100,,4\r\n3,10,5.1005,6\r\n');
  });

  it('keeps its own two columns apart from channels of their names', () => {
    expect(cleanedNames([{ name: 'time_s' }, { name: 'log_line' }, { name: 'log_line_' }])).toEqual({
      time: 'time_s_',
      line: 'log_line__',
    });
  });

  it('is read back by intake to the same doubles, bit by bit', () => {
    fc.assert(
      fc.property(rows, (table) => {
        const log = sketch(table);
        fc.pre(log.channels.every(({ values }) => values.some((value) => !Number.isNaN(value))));
        const { log: again, unread } = read(bytes(cleanedCsv(log)), declarationOf(log), 'data/clean.csv');
        expect(again!.time.seconds).toEqual(log.time.seconds);
        for (const [index, { values }] of log.channels.entries()) expect(again!.channels[index]!.values).toEqual(values);
        expect(again!.setAside).toEqual([]);
        // The column that counts the log's lines is the only one that nothing reads.
        expect(unread).toEqual({ columns: 1, lines: 0, cells: 0 });
      }),
    );
  });

  it('is read by another reader of RFC 4180: as many fields in every line, numbers that are the doubles (Papa Parse 5.7)', () => {
    fc.assert(
      fc.property(rows, (table) => {
        const log = sketch(table);
        const text = cleanedCsv(log);
        expect(text.endsWith('\r\n')).toBe(true);
        const { data, errors, meta } = Papa.parse<string[]>(text, { skipEmptyLines: true });
        expect(errors).toEqual([]);
        expect(meta).toMatchObject({ delimiter: ',', linebreak: '\r\n' });
        const [head, ...body] = data;
        expect(head).toEqual(['time_s', 'soc', 'input', 'throttled', 'log_line']);
        expect(body.map((row) => row.length)).toEqual(table.map(() => 5));
        const value = (cell: string) => (cell === '' ? Number.NaN : Number(cell));
        expect(body.map((row) => value(row[1]!))).toEqual(table.map(([, soc]) => soc));
        expect(body.map((row) => Number(row[4]))).toEqual([...log.lines]);
      }),
    );
  });
});
