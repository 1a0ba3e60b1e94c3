/** How a logger writes its rows: real ones agree on nothing, and the demo's logs show it. */
import type { Reading } from './options.ts';

export interface Dialect {
  readonly encoding: 'utf-8' | 'utf-8 with mark' | 'windows-1252';
  readonly newline: '\n' | '\r\n';
  readonly delimiter: string;
  readonly decimal: '.' | ',';
  /** Lines before the header. */
  readonly preamble?: readonly string[];
  readonly columns: readonly Column[];
  /** Number of a row, from 1, whose last field the logger left out. */
  readonly ragged?: number;
}

export interface Column {
  readonly head: string;
  /** The cell, with a decimal point; the dialect sets its own mark. */
  readonly cell: (reading: Reading) => string;
}

/** A column of numbers with fixed decimals; `absent` is written where the reading was lost. */
export function numbers(head: string, value: (reading: Reading) => number, decimals: number, absent = ''): Column {
  return { head, cell: (reading) => fixed(value(reading), decimals, absent) };
}

/** A column of words for yes and no. */
export function flags(head: string, yes: string, no: string): Column {
  return { head, cell: (reading) => (reading.throttled ? yes : no) };
}

/** Elapsed seconds since the start of the log. */
export function elapsed(head: string, decimals: number): Column {
  return numbers(head, (reading) => reading.elapsed, decimals);
}

/** Civil time from an instant in epoch milliseconds and an offset of the zone in minutes; see the forms below. */
export function civil(head: string, start: number, offset: number, form: CivilForm): Column {
  return { head, cell: (reading) => form(start + reading.elapsed * 1000, offset) };
}

/** One way of writing an instant (epoch milliseconds) in a zone (minutes east of Greenwich). */
export type CivilForm = (instant: number, offset: number) => string;

/** `2026-03-11T14:02:00.000+01:00` */
export const withOffset: CivilForm = (instant, offset) => `${local(instant, offset).slice(0, 23)}${zone(offset)}`;

/** `2026-03-11 14:02:00`, which leaves the zone to whoever knows. */
export const withoutOffset: CivilForm = (instant, offset) => local(instant, offset).slice(0, 19).replace('T', ' ');

/** `14:02:00`, which starts anew at midnight. */
export const clockOnly: CivilForm = (instant, offset) => local(instant, offset).slice(11, 19);

/** The bytes of a log. */
export function write(rows: readonly Reading[], dialect: Dialect): Uint8Array {
  const header = dialect.columns.map((column) => column.head);
  const body = rows.map((reading, index) => {
    const cells = dialect.columns.map((column) => localise(column.cell(reading), dialect));
    return dialect.ragged === index + 1 ? cells.slice(0, -1) : cells;
  });
  const lines = [...(dialect.preamble ?? []), ...[header, ...body].map((cells) => cells.join(dialect.delimiter))];
  return encode(lines.map((line) => line + dialect.newline).join(''), dialect.encoding);
}

function fixed(value: number, decimals: number, absent: string): string {
  return Number.isNaN(value) ? absent : value.toFixed(decimals);
}

function localise(cell: string, dialect: Dialect): string {
  return dialect.decimal === ',' && /^-?\d+\.\d+$/.test(cell) ? cell.replace('.', ',') : cell;
}

function local(instant: number, offset: number): string {
  return new Date(Math.round(instant) + offset * 60_000).toISOString();
}

function zone(offset: number): string {
  const two = (n: number) => String(n).padStart(2, '0');
  return `${offset < 0 ? '-' : '+'}${two(Math.floor(Math.abs(offset) / 60))}:${two(Math.abs(offset) % 60)}`;
}

function encode(text: string, encoding: Dialect['encoding']): Uint8Array {
  if (encoding === 'windows-1252') return Uint8Array.from(text, singleByte);
  return new TextEncoder().encode(encoding === 'utf-8 with mark' ? `\uFEFF${text}` : text);
}

/** The part of windows-1252 that equals Latin-1: all that a degree sign needs. */
function singleByte(character: string): number {
  const code = character.codePointAt(0) ?? 0;
  if (code > 0xff || (code >= 0x80 && code < 0xa0)) throw new RangeError(`no single byte for ${character}`);
  return code;
}
