// The judge is the index over the text: the same cells, numbers and decimals, to the last bit; and of dates the reader of texts.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCivil } from '../../../src/intake/cells/civil.ts';
import type { LogDeclaration } from '../../../src/intake/log.ts';
import { indexBytes } from '../../../src/intake/sheet/byte-index.ts';
import { stampReader } from '../../../src/intake/sheet/byte-stamp.ts';
import { byteText, isAscii, withLineFeeds } from '../../../src/intake/sheet/byte-text.ts';
import { indexCells } from '../../../src/intake/sheet/cell-index.ts';
import { decode } from '../../../src/intake/sheet/decode.ts';
import { linesOf } from '../../../src/intake/sheet/lines.ts';
import { type ReadLog, readWhole } from '../../../src/intake/whole-log.ts';
import { bytes, channel, declare } from '../declare.ts';

/** Cells as logs have them, whole and damaged. */
const cell = fc.oneof(
  fc.double({ noNaN: true }).map(String),
  fc
    .tuple(fc.integer({ min: -99_999, max: 99_999 }), fc.integer({ min: 0, max: 12 }))
    .map(([a, b]) => (a / 10 ** (b % 6)).toFixed(b)),
  fc.constantFrom(
    '',
    ' ',
    '-',
    '+',
    '.',
    ',',
    '1.',
    '.5',
    '-.5',
    '1,5',
    '1.2.3',
    '1e5',
    ' 7 ',
    '\t8',
    '9\r',
    '007',
    '0x1f',
    'NaN',
    '1 2',
  ),
  fc.stringMatching(/^[-+.,\d eE]{0,24}$/),
);
const table = fc.array(fc.array(cell, { minLength: 1, maxLength: 6 }), { minLength: 1, maxLength: 12 });

describe('intake/sheet/byte-index', () => {
  it('finds the cells and numbers that the index over the text finds', () => {
    fc.assert(
      fc.property(
        table,
        fc.constantFrom(',', ';', '\t'),
        fc.constantFrom('.', ',') as fc.Arbitrary<'.' | ','>,
        fc.integer({ min: -9, max: 9 }),
        fc.boolean(),
        (rows, delimiter, mark, shift, open) => {
          const written = bytes(rows.map((row) => row.join(delimiter)).join('\n') + (open ? '' : '\n'));
          const { text } = decode(written);
          const count = linesOf({ text, inBytes: null }).count;
          const [a, b] = [indexBytes(byteText(written)!, count, delimiter), indexCells(text, count, delimiter)];
          const records = Array.from({ length: count }, (_, k) => k);
          expect(records.map(a.row)).toEqual(records.map(b.row));
          expect(records.map(a.letter)).toEqual(records.map(b.letter));
          for (let field = 0; field < 6; field++) {
            const [x, y] = [new Float64Array(count), new Float64Array(count)];
            expect(a.numbers(records, field, mark, shift, x)).toBe(b.numbers(records, field, mark, shift, y));
            expect([...x].filter((value, k) => !Object.is(value, y[k]))).toEqual([]);
          }
        },
      ),
      { numRuns: 400 },
    );
  });

  it('finds the lines that the text has', () => {
    fc.assert(
      fc.property(fc.array(fc.stringMatching(/^[a-c]{0,3}$/), { maxLength: 150 }), fc.boolean(), (rows, open) => {
        const text = rows.join('\n') + (open ? '' : '\n');
        const [a, b] = [linesOf({ text, inBytes: byteText(bytes(text)) }), linesOf({ text, inBytes: null })];
        expect(a.count).toBe(b.count);
        const numbers = Array.from({ length: a.count + 2 }, (_, k) => k);
        expect(numbers.map(a.at)).toEqual(numbers.map(b.at));
      }),
    );
  });

  it('has LF alone at the ends of lines, as the text has', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[ab\r\n]{0,30}$/), (text) => {
        const unified = text.includes('\n') ? text.replace(/\r+(?:\n|$)/g, '\n') : text.replace(/\r/g, '\n');
        expect(new TextDecoder().decode(withLineFeeds(bytes(text)))).toBe(unified);
        expect(decode(bytes(text)).text).toBe(unified);
      }),
      { numRuns: 400 },
    );
  });

  it('tells ASCII from anything else, wherever the other byte stands', () => {
    const plain = new Uint8Array(41).fill(65);
    for (let from = 0; from < 4; from++) {
      expect(isAscii(plain.subarray(from))).toBe(true);
      for (let at = from; at < plain.length; at++) {
        for (const byte of [0, 128, 255]) {
          const other = plain.slice();
          other[at] = byte;
          expect(isAscii(other.subarray(from))).toBe(false);
        }
      }
    }
  });

  it('reads dates as the reader of texts does, or leaves them to it', () => {
    const digits = (most: number, length: number) => fc.integer({ min: 0, max: most }).map((k) => String(k).padStart(length, '0'));
    const text = fc
      .tuple(
        digits(2100, 4),
        digits(13, 2),
        digits(32, 2),
        fc.constantFrom(' ', 'T', '_'),
        digits(25, 2),
        digits(61, 2),
        digits(61, 2),
        fc.constantFrom('', '.5', ',25', '.123456789', '.', '.1234567890'),
        fc.constantFrom('', 'Z', '+01:00', '-12:30', '+19:00', ' CET', '+01', '+01:00Z', 'x'),
      )
      .map(([y, m, d, t, h, i, s, part, zone]) => `${y}-${m}-${d}${t}${h}:${i}:${s}${part}${zone}`);
    const into = new Float64Array(3);
    let quick = 0;
    fc.assert(
      fc.property(text, (written) => {
        const ascii = bytes(written);
        if (!stampReader(ascii)(0, ascii.length, into)) return;
        quick++;
        const civil = readCivil(written, 'ymd');
        expect([...into]).toEqual([civil!.day, civil!.seconds, civil!.offset ?? Number.NaN]);
      }),
      { numRuns: 3000 },
    );
    expect(quick).toBeGreaterThan(80);
  });

  it('gives the Log of the text, clean and with bytes changed', () => {
    const channels = [channel('soc', 'temperature', 'soc_c'), channel('input', 'power', 'input_mw')];
    const row = fc.tuple(fc.integer({ min: 200, max: 900 }), fc.integer({ min: 0, max: 99_999 }));
    fc.assert(
      fc.property(
        fc.array(row, { minLength: 3, maxLength: 40 }),
        fc.boolean(),
        fc.array(fc.tuple(fc.nat(), fc.integer({ min: 9, max: 126 })), { maxLength: 4 }),
        (rows, dated, changes) => {
          const time = (k: number) => (dated ? `2026-03-14 09:${String(10 + (k >> 5))}:${String(10 + (k % 32))}` : String(k));
          const text = `${dated ? 'time' : 't_s'},soc_c,input_mw\n${rows.map(([a, b], k) => `${time(k)},${a / 10},${b}\n`).join('')}`;
          const ascii = bytes(text);
          for (const [at, byte] of changes) ascii[at % (ascii.length - 1)] = byte === 34 ? 35 : byte;
          expectSame(ascii, declare(channels));
        },
      ),
      { numRuns: 200 },
    );
  });

  it.each(['\n', '\r\n', '\r'])(
    'gives the Log of the text with other letters in its head, and beyond 64 KiB, lines ending in %j',
    (eol) => {
      const channels = [channel('soc', 'temperature', 'soc'), channel('input', 'power', 'input_mw')];
      const odd = ['1e5', ' 7', '5.', 'x', '', '-0', '1234567890.1234567', '7,8'];
      const lines = Array.from({ length: 3000 }, (_, k) => {
        const second = `${String(Math.floor(k / 60)).padStart(2, '0')}:${String(k % 60).padStart(2, '0')}`;
        return `2026-03-14 09:${second},${k % 29 === 0 ? odd[(k / 29) % odd.length] : 50 + (k % 23) / 10},${4000 + ((k * 13) % 300)}`;
      });
      const text = ['# Prüfstand', 'time,soc [°C],input_mw', ...lines, ''].join(eol);
      const named = declare([{ ...channels[0]!, column: 'soc [°C]' }, channels[1]!]);
      expect(bytes(text).length).toBeGreaterThan(2 ** 16);
      expect(byteText(bytes(text))).not.toBeNull();
      const { log } = expectSame(bytes(text), named);
      expect(log!.setAside.length).toBeGreaterThan(20);
    },
  );
});

/** Reads bytes, and their text in UTF-16, which is read by the general way: all must be the same but the encoding. */
function expectSame(utf8: Uint8Array, declaration: LogDeclaration): ReadLog {
  const units = Uint16Array.from(`\uFEFF${new TextDecoder().decode(utf8)}`, (letter) => letter.charCodeAt(0));
  const [quick, general] = [utf8, new Uint8Array(units.buffer)].map((each) => readWhole(each, declaration, 'data/a.csv'));
  const comparable = ({ log, unread, problems }: ReadLog) => ({
    unread,
    problems,
    log: log && { ...log, encoding: '', inferences: log.inferences.filter(({ method }) => method !== 'encoding') },
  });
  expect(comparable(quick!)).toEqual(comparable(general!));
  return quick!;
}
