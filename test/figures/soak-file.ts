/** The file of an invented soak, read by intake: for properties of what stands in a file. */
import { derive } from '../../src/figures/derive.ts';
import type { Figure } from '../../src/figures/figure.ts';
import type { Log } from '../../src/intake/log.ts';
import { read } from '../../src/intake/read.ts';
import { contextOf, every, noise, phase } from './build.ts';

const PLACE = { file: 'content/runs/invented.md', line: 1, column: 1 };
const FILE = 'data/invented.csv';
const HEADER = 'Time [s],SoC [°C],Board [W]';

export function bytesOf(header: string, rows: readonly string[]): Uint8Array {
  return new TextEncoder().encode([header, ...rows, ''].join('\n'));
}

/** Reads rows under a header with the columns Time, SoC and Board, each with its unit in brackets, in any order. */
export function readLog(rows: readonly string[], header = HEADER): Log {
  const columnOf = (word: string) => header.split(',').find((name) => name.startsWith(word))!;
  const channels = [
    { name: 'soc', quantity: 'temperature', column: columnOf('SoC'), place: PLACE },
    { name: 'board', quantity: 'power', column: columnOf('Board'), at: 'board input', place: PLACE },
  ] as const;
  const time = { column: columnOf('Time') };
  const { log, problems } = read(bytesOf(header, rows), { file: FILE, time, channels, repairs: [], place: PLACE }, FILE);
  if (!log) throw new Error(problems.map(({ found }) => found).join('; '));
  return log;
}

const PHASES = [phase('idle', 0, 300), phase('load', 300, 3000)];

export function ofLog(log: Log): ReadonlyMap<string, Figure> {
  return derive(log, contextOf({ phases: PHASES, ambient: { value: 20, unit: '°C', parts: [] } })).figures;
}

/** 601 rows, 5 s apart: seconds, hundredths of 1 °C, milliwatts, all of them whole. */
export function soakReadings(seed: number): (readonly [seconds: number, hundredths: number, milliwatts: number])[] {
  const random = noise(seed);
  return [...every(5, 3000)].map((t) => {
    const heat = t < 300 ? 0 : 1 - Math.exp(-(t - 300) / 250);
    const hundredths = Math.round(100 * (25 + 40 * heat + 0.2 * random()));
    return [t, hundredths, Math.round(1000 * ((t < 300 ? 3 : 9) + 0.1 * random()))] as const;
  });
}

/** The same as cells in s, °C and W. */
export function soakRows(seed: number): string[][] {
  return soakReadings(seed).map(([t, hundredths, mw]) => [String(t), (hundredths / 100).toFixed(2), (mw / 1000).toFixed(3)]);
}
