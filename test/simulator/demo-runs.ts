/** The runs of the demo: who was soaked, how, and in which dialect its logger wrote. All of it is invented. */
import { civil, clockOnly, type Dialect, elapsed, flags, numbers, withOffset, withoutOffset } from './dialect.ts';
import { benchInstruments, LIMITS, SPECIMENS, type SpecimenAlias, SUPPLY } from './larch.ts';
import type { Options, Reading, Room, Schedule, Setting } from './options.ts';

export interface DemoRun {
  /** Below data/. */
  readonly file: string;
  readonly options: Options;
  readonly dialect: Dialect;
}

const HOUR_SOAK: Schedule = { idle: 300, load: 3600, coolDown: 300 };
const EAST_1 = 60;
const die = (reading: Reading) => reading.die;
const board = (reading: Reading) => reading.board;
const room = (reading: Reading) => reading.room;
const volts = (reading: Reading) => reading.voltage;
const amps = (reading: Reading) => reading.current;
const PLAIN = { encoding: 'utf-8', newline: '\n', delimiter: ',', decimal: '.' } as const;

/** What the runs share; `own` says what differs. */
function soak(seed: number, specimen: SpecimenAlias, setting: Setting, room: Room, own: Partial<Options> = {}): Options {
  return {
    seed,
    specimen: SPECIMENS[specimen],
    setting,
    schedule: HOUR_SOAK,
    room,
    supply: SUPPLY,
    every: 2,
    instruments: benchInstruments(specimen),
    limits: LIMITS,
    workload: { wander: 0.006, memory: 30 },
    ...own,
  };
}

const rated: DemoRun = {
  file: 'larch-2/rated-soak.csv',
  options: soak(2001, 'no-1', { clock: 2.0e9, voltageOffset: 0 }, { start: 21.9, warming: 1.2, wander: 0.04 }),
  dialect: {
    ...PLAIN,
    columns: [
      elapsed('Elapsed [s]', 1),
      numbers('SoC [°C]', die, 1),
      numbers('Board [°C]', board, 1),
      numbers('Room [°C]', room, 1),
      numbers('Clock [MHz]', (r) => r.clock / 1e6, 0),
      flags('Throttled', '1', '0'),
      numbers('Input [V]', volts, 2),
      numbers('Input [A]', amps, 3),
    ],
  },
};

/** A script on another machine: ISO 8601 with the offset, milliamperes, and once a probe that did not answer. */
const brisk: DemoRun = {
  file: 'larch-2/brisk-soak.csv',
  options: soak(2202, 'no-1', { clock: 2.2e9, voltageOffset: 0 }, { start: 21.6, warming: 1.5, wander: 0.04 }),
  dialect: {
    ...PLAIN,
    newline: '\r\n',
    ragged: 1234,
    columns: [
      civil('timestamp', Date.UTC(2026, 2, 11, 13, 2), EAST_1, withOffset),
      numbers('soc_temp_c', die, 1),
      numbers('room_temp_c', room, 1),
      numbers('clock_hz', (r) => r.clock, 0),
      flags('throttled', 'yes', 'no'),
      numbers('input_v', volts, 2),
      numbers('input_ma', (r) => amps(r) * 1000, 0),
      numbers('board_temp_c', board, 1),
    ],
  },
};

/** Epoch milliseconds, and readings of the probe that were lost and stand as NA. */
const quick: DemoRun = {
  file: 'larch-2/quick-soak.csv',
  options: soak(2403, 'no-1', { clock: 2.4e9, voltageOffset: 0.06 }, { start: 22.0, warming: 1.1, wander: 0.04 }, { lost: 0.004 }),
  dialect: {
    ...PLAIN,
    columns: [
      civil('t_ms', Date.UTC(2026, 2, 12, 8, 47), EAST_1, (instant) => String(Math.round(instant))),
      numbers('die (°C)', die, 1),
      numbers('board (°C)', board, 1, 'NA'),
      numbers('room (°C)', room, 1),
      numbers('clock (MHz)', (r) => r.clock / 1e6, 0),
      flags('throttled', 'true', 'false'),
      numbers('input (V)', volts, 2),
      numbers('input (A)', amps, 3),
    ],
  },
};

/** A data logger set to a language with decimal commas: semicolons, a degree sign of one byte, a row every second. */
const fast: DemoRun = {
  file: 'larch-2/fast-soak.csv',
  options: soak(2604, 'no-1', { clock: 2.6e9, voltageOffset: 0.08 }, { start: 22.1, warming: 1.3, wander: 0.04 }, { every: 1 }),
  dialect: {
    encoding: 'windows-1252',
    newline: '\r\n',
    delimiter: ';',
    decimal: ',',
    columns: [
      elapsed('Elapsed [s]', 0),
      numbers('Temp [°C]', die, 1),
      numbers('Board [°C]', board, 1),
      numbers('Room [°C]', room, 1),
      numbers('Clock [GHz]', (r) => r.clock / 1e9, 3),
      flags('Limit', '1', '0'),
      numbers('Volts [V]', volts, 2),
      numbers('Amps [A]', amps, 3),
    ],
  },
};

/** Late in the evening, over midnight, current only; the device restarted, and the run was given up soon after. */
const short: DemoRun = {
  file: 'larch-2/first-try.csv',
  options: soak(
    2405,
    'no-1',
    { clock: 2.4e9, voltageOffset: 0 },
    { start: 22.4, warming: 0.3, wander: 0.04 },
    { schedule: { idle: 180, load: 840, coolDown: 0 }, restart: { at: 640, length: 46 } },
  ),
  dialect: {
    ...PLAIN,
    preamble: ['Bench log, Larch 2 no-1, first try at 2.4 GHz'],
    columns: [
      civil('time', Date.UTC(2026, 2, 9, 22, 51, 20), EAST_1, clockOnly),
      numbers('soc [°C]', die, 1),
      numbers('room [°C]', room, 1),
      numbers('clock [MHz]', (r) => r.clock / 1e6, 0),
      numbers('input [A]', amps, 3),
    ],
  },
};

/** The other specimen, with a logger that leaves the zone out and puts a byte-order mark in. */
const second: DemoRun = {
  file: 'larch-2/second-rated-soak.csv',
  options: soak(2006, 'no-2', { clock: 2.0e9, voltageOffset: 0 }, { start: 22.2, warming: 1.0, wander: 0.04 }),
  dialect: {
    ...PLAIN,
    encoding: 'utf-8 with mark',
    delimiter: ', ',
    columns: [
      civil('Time', Date.UTC(2026, 2, 24, 9, 10), EAST_1, withoutOffset),
      numbers('SoC (°C)', die, 1),
      numbers('Board (°C)', board, 1),
      numbers('Room (°C)', room, 1),
      numbers('Clock (kHz)', (r) => r.clock / 1e3, 0),
      flags('Throttled', '1', '0'),
      numbers('Input (V)', volts, 2),
      numbers('Input (A)', amps, 3),
    ],
  },
};

/** Firmware that is not out yet: the run is held back, and only a draft speaks of it. */
const preview: DemoRun = {
  file: 'larch-2/preview-soak.csv',
  options: soak(
    2207,
    'no-1',
    { clock: 2.2e9, voltageOffset: 0, boost: { clock: 2.6e9, seconds: 240 } },
    { start: 21.8, warming: 1.1, wander: 0.04 },
  ),
  dialect: rated.dialect,
};

/** First instant of the metered benchmarks' log, epoch milliseconds. */
export const METERED_START = Date.UTC(2026, 2, 17, 8, 20);

/** Two benchmarks at the rated setting with the logger running, a row every second; a filler keeps the load on between repeats. */
const metered: DemoRun = {
  file: 'larch-2/metered.csv',
  options: soak(
    2010,
    'no-1',
    { clock: 2.0e9, voltageOffset: 0 },
    { start: 22.1, warming: 0.5, wander: 0.04 },
    { every: 1, schedule: { idle: 60, load: 1140, coolDown: 60 } },
  ),
  dialect: {
    ...PLAIN,
    columns: [
      civil('timestamp', METERED_START, EAST_1, withOffset),
      numbers('soc_temp_c', die, 1),
      numbers('room_temp_c', room, 1),
      numbers('clock_hz', (r) => r.clock, 0),
      flags('throttled', 'yes', 'no'),
      numbers('input_v', volts, 2),
      numbers('input_ma', (r) => amps(r) * 1000, 0),
      numbers('board_temp_c', board, 1),
    ],
  },
};

export const DEMO_RUNS = { rated, brisk, quick, fast, short, second, preview, metered } as const;
