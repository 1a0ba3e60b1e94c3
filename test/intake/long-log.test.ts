// The judge of the parts is the reading at once: the same rows, times and readings to the last bit.
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import type { LogDeclaration } from '../../src/intake/log.ts';
import { readLong } from '../../src/intake/long-log.ts';
import { readWhole } from '../../src/intake/whole-log.ts';
import { bytes, channel, declare, RUN } from './declare.ts';

const FILE = 'data/a.csv';
const two = (value: number) => String(value).padStart(2, '0');
const clock = (second: number) => `${two(Math.floor(second / 3600) % 24)}:${two(Math.floor(second / 60) % 60)}:${two(second % 60)}`;
const ROWS = 3000;
const head = (time: string) => `# bench card\n${time},soc_c,input_w,throttled\n`;
const CHANNELS = [
  channel('soc', 'temperature', 'soc_c'),
  channel('input', 'power', 'input_w'),
  channel('flag', 'throttle_flag', 'throttled'),
];

function log(time: (row: number) => string, change: (line: string, row: number) => string = (line) => line): string {
  const row = (k: number) =>
    `${time(k)},${(50 + (k % 83) / 10).toFixed(1)},${(7 + (k % 17) / 100).toFixed(2)},${k % 500 < 3 ? '0x4' : '0x0'}`;
  // A counter states its unit.
  return (
    head(/^[\d.]+$/.test(time(0)) && time(0).length < 9 ? 't_s' : 'time') +
    Array.from({ length: ROWS }, (_, k) => `${change(row(k), k)}\n`).join('')
  );
}

function expectSame(text: string | Uint8Array, more: Partial<LogDeclaration> = {}): ReturnType<typeof readLong> {
  const written = typeof text === 'string' ? bytes(text) : text;
  const whole = readWhole(written, declare(CHANNELS, more), FILE);
  const parts = readLong(written, declare(CHANNELS, more), FILE, { part: 9000 });
  expect(parts.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
  const { inferences: _, ...wanted } = whole.log!;
  const { inferences: __, ...log } = parts.log!;
  expect(log).toEqual(wanted);
  expect(parts.unread).toEqual(whole.unread);
  return parts;
}

describe('a long log in parts', () => {
  it.each([
    ['milliseconds since 1970', (k: number) => String(1_773_480_000_000 + k * 100)],
    ['dates', (k: number) => `2026-03-14 ${clock(60_000 + k)}`],
    ['a clock that passes midnight', (k: number) => clock(85_000 + k)],
    ['elapsed seconds with a fraction', (k: number) => (k * 0.1).toFixed(1)],
  ])('reads %s as at once', (_, time) => {
    expectSame(log(time));
  });

  it('reads a packed one', () => {
    expectSame(gzipSync(log((k) => String(k))));
  });

  it('sets the same lines and cells aside, finds the same gap, and tells it once', () => {
    const text = log(
      (k) => String(k < 2000 ? k : k + 500),
      (line, k) =>
        k % 700 === 350
          ? line.slice(0, -4)
          : k % 900 === 20
            ? line.replace(/,5\d/, ',x')
            : k === 1500
              ? line.replace(/^\d+/, '7')
              : line,
    );
    const { problems } = expectSame(text);
    expect(problems.map(({ rule }) => rule).sort()).toEqual(
      ['cell-not-a-number', 'field-count', 'time-backward', 'time-gap'].sort(),
    );
  });

  it('takes a channel that has readings in a part of the log alone', () => {
    const late = log(
      (k) => String(k),
      (line, k) => (k < 1400 ? line.replace(/^(\d+),[\d.]+/, '$1,') : line),
    );
    expect(expectSame(late).log!.channels[0]!.missing).toBe(1400);
  });

  it('drops, shifts and knows the lines that the author names', () => {
    const repairs = [
      { kind: 'drop', fromLine: 1200, toLine: 1210, reason: 'probe off', place: RUN },
      { kind: 'shift_time', bySeconds: 40, fromLine: 1900, toLine: 3002, reason: 'clock set', place: RUN },
    ] as const;
    const known = [{ fromLine: 1900, toLine: 1900, reason: 'clock set', place: RUN }];
    const { log: read } = expectSame(
      log((k) => String(k)),
      { repairs, known },
    );
    expect(read!.repairs.map(({ rows }) => rows)).toEqual([11, 1103]);
    expect(read!.known![0]!.found).toEqual(['a gap of 41 s']);
  });

  it('is an error where the end is read otherwise than the beginning', () => {
    const dates = log((k) => `${k < 1500 ? '05/03/2026' : '05/14/2026'} ${clock(k)}`);
    const reading = readLong(bytes(dates), declare(CHANNELS), FILE, { part: 9000 });
    expect(reading.log).toBeNull();
    expect(reading.problems.map(({ rule }) => rule)).toEqual(['parts-differ']);
    const units = log(
      (k) => String(k),
      (line, k) => (k > 1500 ? line.replace(/^(\d+,[\d.]+)/, '$1 F') : line),
    );
    expect(readLong(bytes(units), declare(CHANNELS), FILE, { part: 9000 }).log).toBeNull();
  });

  it('is an error where the decimal mark changes, and none where a part holds no mark', () => {
    const rows = (text: (row: number) => string) =>
      `t_s;soc_c\n${Array.from({ length: ROWS }, (_, k) => `${k};${text(k)}\n`).join('')}`;
    const soc = declare([CHANNELS[0]!]);
    const changed = rows((k) => `${50 + (k % 83)}${k < 1500 ? ',' : '.'}${k % 7}`);
    const { problems } = readLong(bytes(changed), soc, FILE, { part: 9000 });
    expect(problems.filter(({ severity }) => severity === 'error')[0]?.found).toContain('the decimal mark would be another');
    const whole = rows((k) => (k < 1500 ? `${50 + (k % 83)},${k % 7}` : String(50 + (k % 83))));
    expect(readLong(bytes(whole), soc, FILE, { part: 9000 }).log?.rows).toBe(ROWS);
    const later = rows((k) => (k < 1500 ? String(50 + (k % 83)) : `${50 + (k % 83)},${k % 7}`));
    const { log: read } = readLong(bytes(later), soc, FILE, { part: 9000 });
    expect([...read!.channels[0]!.values]).toEqual([...readWhole(bytes(later), soc, FILE).log!.channels[0]!.values]);
    const dated = whole.replace('t_s', 'time').replace(/^\d+(?=;)/gm, (k) => `14.03.2026 ${clock(32_400 + Number(k))}`);
    expect(readLong(bytes(dated), soc, FILE, { part: 9000 }).log?.rows).toBe(ROWS);
  });

  it('says that nothing is in a file without a byte', () => {
    expect(readLong(new Uint8Array(0), declare(CHANNELS), FILE).problems.map(({ rule }) => rule)).toEqual(['empty-file']);
  });

  it('takes neighbours as one where there are more rows than are kept, and says so', () => {
    const { log: read } = readLong(bytes(log((k) => String(k))), declare(CHANNELS), FILE, {
      part: 9000,
      rows: { keep: 400, leave: 400 },
    });
    expect(read!.condensed).toEqual({ rows: ROWS, longest: 8 });
    expect(read!.rows).toBeLessThan(400);
    expect(read!.inferences.map(({ method }) => method)).toContain('condensed');
  });

  it('is an error where more rows than are kept follow each other at steps that differ', () => {
    const uneven = log((k) => String(Math.floor(k / 10) * 3 + (k % 10 < 6 ? (k % 10) / 10 : 0.5 + ((k % 10) - 5) / 2)));
    const { log: read, problems } = readLong(bytes(uneven), declare(CHANNELS), FILE, {
      part: 9000,
      rows: { keep: 400, leave: 400 },
    });
    expect(read).toBeNull();
    expect(problems.map(({ rule }) => rule)).toEqual(['too-many-rows']);
    expect(problems[0]!.remedy).toContain('each phase of the log');
  });

  it('tells a cut packed one, a line without an end and UTF-16 apart from a log', () => {
    const packed = gzipSync(log((k) => String(k)));
    const refused = (text: Uint8Array) =>
      readLong(text, declare(CHANNELS), FILE, { part: 9000 }).problems.map(({ found }) => found);
    expect(refused(packed.subarray(0, -9))).toEqual(['the packed file (gzip) is cut off or damaged']);
    expect(refused(bytes('x'.repeat(40_000)))[0]).toContain('a line of the file has more than');
    expect(refused(new Uint8Array(Buffer.from(`\ufeff${log((k) => String(k))}`, 'utf16le')))).toEqual([
      'a long log is written in UTF-16',
    ]);
  });
});
