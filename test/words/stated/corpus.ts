/** Reads the corpus: one phrase a line, and the interval of true values that it means, in a unit that people would say. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export interface Case {
  readonly file: string;
  readonly phrase: string;
  readonly lower: number;
  readonly upper: number;
  readonly lowerClosed: boolean;
  readonly upperClosed: boolean;
  readonly unit: string;
  readonly bySize: boolean;
}

const FOLDER = join(import.meta.dirname, 'corpus');

/** Units of the corpus, in canonical ones: [name, factor, offset]. Written out here so that the reader's own tables are checked. */
const UNITS: Readonly<Record<string, readonly [unit: string, factor: number, offset?: number]>> = {
  '°C': ['°C', 1],
  K: ['K', 1],
  mK: ['K', 1e-3],
  '°F': ['°C', 5 / 9, -160 / 9],
  '°F-difference': ['K', 5 / 9],
  'K/W': ['K/W', 1],
  Hz: ['Hz', 1],
  kHz: ['Hz', 1e3],
  MHz: ['Hz', 1e6],
  GHz: ['Hz', 1e9],
  A: ['A', 1],
  mA: ['A', 1e-3],
  µA: ['A', 1e-6],
  V: ['V', 1],
  mV: ['V', 1e-3],
  W: ['W', 1],
  mW: ['W', 1e-3],
  kW: ['W', 1e3],
  J: ['J', 1],
  kJ: ['J', 1e3],
  Wh: ['J', 3600],
  kWh: ['J', 3.6e6],
  mΩ: ['V/A', 1e-3],
  s: ['s', 1],
  ms: ['s', 1e-3],
  min: ['s', 60],
  h: ['s', 3600],
  d: ['s', 86400],
  '1': ['1', 1],
  '%': ['1', 0.01],
  ppm: ['1', 1e-6],
};

function linesOf(file: string): (readonly [phrase: string, rest: string])[] {
  const lines = readFileSync(join(FOLDER, file), 'utf8').split('\n');
  return lines
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => [line.slice(0, line.lastIndexOf(' | ')), line.slice(line.lastIndexOf(' | ') + 3)] as const);
}

/** The phrases that must be read. */
export function readCases(): Case[] {
  const files = readdirSync(FOLDER).filter((file) => file !== 'unread.txt');
  return files.sort().flatMap((file) => linesOf(file).map(([phrase, meaning]) => caseOf(file, phrase, meaning)));
}

/** The phrases that must not be read, with words of the reason. */
export function unreadCases(): (readonly [phrase: string, reason: string])[] {
  return linesOf('unread.txt');
}

function caseOf(file: string, phrase: string, meaning: string): Case {
  const [, open = '', low = '', high = '', close = '', name = '', size] =
    /^([[(])(\S+), (\S+)([\])]) (\S+)( size)?$/.exec(meaning) ?? [];
  const unit = UNITS[name];
  if (!unit) throw new Error(`${file}: cannot read the meaning of "${phrase}": ${meaning}`);
  const [canonical, factor, offset = 0] = unit;
  const end = (text: string) => Number(text.replace('inf', 'Infinity')) * factor + offset;
  const ends = { lower: end(low), upper: end(high), lowerClosed: open === '[', upperClosed: close === ']' };
  return { file, phrase, ...ends, unit: canonical, bySize: size !== undefined };
}
