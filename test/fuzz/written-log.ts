/** A table of readings, and one of the many ways in which a logger writes it. What must be read from it is known from the table. */
import { gzipSync } from 'node:zlib';

import { daysFromCivil } from '../../src/intake/cells/civil.ts';
import type { ChannelDeclaration, LogDeclaration } from '../../src/intake/log.ts';
import { RUN } from '../intake/declare.ts';

/** Uniform numbers in [0, 1). */
export type Random = () => number;

export interface WrittenLog {
  readonly bytes: Uint8Array;
  readonly declaration: LogDeclaration;
  /** Seconds since the first row, one a row. */
  readonly seconds: readonly number[];
  /** Readings in canonical units by channel; NaN is no reading. */
  readonly values: ReadonlyMap<string, readonly number[]>;
  /** Text of each row's line, as it stands in the file. */
  readonly lines: readonly string[];
  /** In words, for reports. */
  readonly shape: string;
}

const below = (random: Random, limit: number) => Math.floor(random() * limit);
const pick = <T>(random: Random, some: readonly T[]): T => some[below(random, some.length)]!;
const chance = (random: Random, share: number) => random() < share;

interface Column {
  readonly name: string;
  readonly channel: ChannelDeclaration;
  /** As written with a decimal point; '' is no reading. */
  readonly texts: readonly string[];
  readonly values: readonly number[];
}

/** Names with the unit they state, and the power of ten to the canonical unit. */
const COLUMNS = [
  ['soc_c', 'temperature', 0],
  ['board [°C]', 'temperature', 0],
  ['Core (C)', 'temperature', 0],
  ['case_mc', 'temperature', -3],
  ['input [W]', 'power', 0],
  ['rail_mw', 'power', -3],
  ['supply [V]', 'voltage', 0],
  ['drawn (mA)', 'current', -3],
  ['cpu clock [MHz]', 'clock', 6],
  ['energy [J]', 'energy', 0],
] as const;

function columnOf(random: Random, rows: number, k: number): Column {
  const [name, quantity, power] = COLUMNS[k]!;
  const decimals = below(random, 4);
  const missing = chance(random, 0.2) ? 0.1 : 0;
  let level = 20 + below(random, 50);
  const texts: string[] = [];
  const values: number[] = [];
  for (let row = 0; row < rows; row++) {
    level = Math.max(1, level + random() - 0.5);
    const text = chance(random, missing) ? '' : level.toFixed(decimals);
    texts.push(text);
    // The decimal that is written, moved by the unit's power of ten: correctly rounded by ECMA-262.
    values.push(text === '' ? Number.NaN : Number(`${text}e${power}`));
  }
  if (values.every(Number.isNaN)) {
    texts[0] = '20';
    values[0] = Number(`20e${power}`);
  }
  return { name, channel: { name: `c${k}`, quantity, column: name, place: RUN }, texts, values };
}

interface Clock {
  readonly names: readonly string[];
  readonly cells: (row: number) => readonly string[];
  readonly time?: LogDeclaration['time'];
  readonly what: string;
}

const two = (value: number) => String(value).padStart(2, '0');
const clockText = (second: number) =>
  `${two(Math.floor(second / 3600) % 24)}:${two(Math.floor(second / 60) % 60)}:${two(second % 60)}`;

/** A column or two of time, `step` whole seconds from row to row. */
function clockOf(random: Random, step: number, point: string): Clock {
  const start = below(random, 80_000);
  const date = (second: number, order: 'ymd' | 'dmy', mark: string) => {
    const day = new Date((daysFromCivil(2026, 3, 20) + Math.floor(second / 86_400)) * 86_400_000);
    const parts = [String(day.getUTCFullYear()), two(day.getUTCMonth() + 1), two(day.getUTCDate())];
    return (order === 'ymd' ? parts : parts.reverse()).join(mark);
  };
  const at = (row: number) => start + row * step;
  return pick<() => Clock>(random, [
    () => ({ names: ['t_s'], cells: (row) => [String(row * step)], what: 'elapsed seconds' }),
    () => ({ names: ['time_ms'], cells: (row) => [String(row * step * 1000)], what: 'elapsed milliseconds' }),
    () => ({
      names: ['elapsed [min]'],
      cells: (row) => [`${(row * step) / 60}`.replace('.', point)],
      time: { unit: 'min' },
      what: 'minutes',
    }),
    () => ({ names: ['time'], cells: (row) => [String(1_773_480_000 + at(row))], what: 'epoch seconds' }),
    () => ({ names: ['time'], cells: (row) => [`${date(at(row), 'ymd', '-')} ${clockText(at(row))}`], what: 'date and clock' }),
    () => ({
      names: ['timestamp'],
      cells: (row) => [`${date(at(row), 'ymd', '-')}T${clockText(at(row))}+01:00`],
      what: 'with an offset',
    }),
    () => ({
      names: ['Date', 'Time'],
      cells: (row) => [date(at(row), 'dmy', '.'), clockText(at(row))],
      what: 'two columns, dotted',
    }),
    () => ({ names: ['time'], cells: (row) => [clockText(at(row))], what: 'clock' }),
  ])();
}

interface Form {
  readonly delimiter: string;
  readonly point: '.' | ',';
  readonly quoted: boolean;
  readonly end: string;
  readonly encoding: 'utf-8' | 'utf-8 with mark' | 'utf-16' | 'windows-1252';
  readonly trailing: boolean;
  readonly padded: boolean;
  readonly preamble: number;
  readonly footer: number;
  readonly headerAgain: boolean;
  readonly lastEnd: boolean;
  /** How many members of gzip it is packed into; 0 for plain text. */
  readonly members: number;
}

function formOf(random: Random): Form {
  const delimiter = pick(random, [',', ',', ';', '\t', '|']);
  const point = chance(random, 0.3) ? ',' : '.';
  return {
    delimiter,
    point,
    quoted: (delimiter === ',' && point === ',') || chance(random, 0.1),
    end: pick(random, ['\n', '\n', '\r\n']),
    encoding: pick(random, ['utf-8', 'utf-8', 'utf-8 with mark', 'utf-16', 'windows-1252'] as const),
    trailing: chance(random, 0.1),
    padded: chance(random, 0.1),
    preamble: chance(random, 0.3) ? 1 + below(random, 4) : 0,
    footer: chance(random, 0.2) ? 1 + below(random, 3) : 0,
    headerAgain: chance(random, 0.1),
    lastEnd: chance(random, 0.9),
    members: chance(random, 0.1) ? 1 + below(random, 3) : 0,
  };
}

const PREAMBLE = ['Bench logger of our own', 'Serial no.: 17', '*** recording ***', 'channels as wired'];

/** Makes a log of `random` readings in a `random` form. */
export function writtenLog(random: Random): WrittenLog {
  const form = formOf(random);
  const rows = 12 + below(random, 40);
  const step = pick(random, [1, 1, 2, 5, 10, 60]);
  const clock = clockOf(random, step, form.point);
  const chosen = COLUMNS.map((_, k) => k).filter(() => chance(random, 0.4));
  const columns = (chosen.length > 0 ? chosen : [0]).map((k) => columnOf(random, rows, k));
  const cell = (text: string) => {
    const quoted = form.quoted && text !== '' ? `"${text}"` : text;
    return form.padded ? ` ${quoted} ` : quoted;
  };
  const join = (cells: readonly string[]) => cells.join(form.delimiter) + (form.trailing ? form.delimiter : '');
  const head = join([...clock.names, ...columns.map(({ name }) => name)].map(cell));
  const body = Array.from({ length: rows }, (_, row) =>
    join([...clock.cells(row), ...columns.map(({ texts }) => texts[row]!.replace('.', form.point))].map(cell)),
  );
  const lines = [
    ...PREAMBLE.slice(0, form.preamble),
    head,
    ...body.slice(0, 6),
    ...(form.headerAgain ? [head] : []),
    ...body.slice(6),
    ...Array.from({ length: form.footer }, (_, k) => `Note ${'abc'[k]}: recording ended well`),
  ];
  const text = lines.join(form.end) + (form.lastEnd || form.footer === 0 ? form.end : '');
  return {
    bytes: packed(encoded(text, form.encoding), form.members),
    declaration: {
      file: 'a.csv',
      channels: columns.map(({ channel }) => channel),
      repairs: [],
      place: RUN,
      ...(clock.time ? { time: clock.time } : {}),
    },
    seconds: Array.from({ length: rows }, (_, row) => row * step),
    values: new Map(columns.map(({ channel, values }) => [channel.name, values])),
    lines: body,
    shape: `${clock.what}; ${JSON.stringify(form)}`,
  };
}

function encoded(text: string, encoding: Form['encoding']): Uint8Array {
  if (encoding === 'windows-1252') return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
  if (encoding === 'utf-16') {
    const units = Uint16Array.from(`\uFEFF${text}`, (letter) => letter.charCodeAt(0));
    return new Uint8Array(units.buffer);
  }
  return new TextEncoder().encode(encoding === 'utf-8' ? text : `\uFEFF${text}`);
}

/** Members of about the same length, one after the other. */
function packed(bytes: Uint8Array, members: number): Uint8Array {
  if (members === 0) return bytes;
  const size = Math.ceil(bytes.length / members);
  return Buffer.concat(Array.from({ length: members }, (_, k) => gzipSync(bytes.subarray(k * size, (k + 1) * size))));
}

const DAMAGES = ['change', 'remove', 'insert', 'cut', 'repeat', 'nul', 'lose a line end'] as const;

/** The bytes with one to four places damaged, and what was done in words. */
export function damaged(bytes: Uint8Array, random: Random): { readonly bytes: Uint8Array; readonly how: string } {
  let now = [...bytes];
  const how: string[] = [];
  for (let count = 1 + below(random, 4); count > 0 && now.length > 0; count--) {
    const at = below(random, now.length);
    const length = 1 + below(random, 30);
    const kind = pick(random, DAMAGES);
    how.push(`${kind} at byte ${at}`);
    if (kind === 'change') now[at] = below(random, 256);
    else if (kind === 'remove') now.splice(at, length);
    else if (kind === 'insert') now.splice(at, 0, below(random, 256));
    else if (kind === 'cut') now = chance(random, 0.3) ? now.slice(0, at) : now;
    else if (kind === 'repeat') now.splice(at, 0, ...now.slice(at, at + length));
    else if (kind === 'nul') now.fill(0, at, at + length);
    else {
      const end = now.indexOf(10, at);
      if (end >= 0) now.splice(end, 1);
    }
  }
  return { bytes: Uint8Array.from(now), how: how.join(', ') };
}
