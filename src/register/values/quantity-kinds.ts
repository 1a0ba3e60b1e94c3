/** What a key's quantity must be: its canonical unit, and how messages speak of it. */
import type { QuantityKind } from '../../intake/log.ts';
import type { ParseOptions } from '../../quantities/parse.ts';

export interface Kind {
  /** Canonical unit that the parser gives. */
  readonly unit: string;
  /** "a temperature". */
  readonly noun: string;
  readonly example: string;
  /** Values at or below this cannot be; absent = any value can. */
  readonly above?: number;
  /** How the parser is to read it: an absolute temperature or a difference, and what no stated uncertainty means. */
  readonly options?: ParseOptions;
}

export const TEMPERATURE: Kind = {
  unit: '°C',
  noun: 'a temperature',
  example: '22.4 °C',
  above: -273.15,
  options: { kind: 'temperature' },
};
/** Measured, not set: without `±` its uncertainty is unknown, not zero. */
export const AMBIENT: Kind = { ...TEMPERATURE, options: { kind: 'temperature', unstated: 'unknown' } };
const TEMPERATURE_STEP: Kind = {
  unit: 'K',
  noun: 'a difference of temperatures',
  example: '0.1 K',
  above: 0,
  options: { kind: 'difference' },
};
export const CLOCK: Kind = { unit: 'Hz', noun: 'a clock', example: '2.6 GHz', above: 0 };
export const VOLTAGE: Kind = { unit: 'V', noun: 'a voltage', example: '5.1 V', above: 0 };
/** Measured, as the ambient is. */
export const SUPPLY: Kind = { ...VOLTAGE, options: { unstated: 'unknown' } };
export const VOLTAGE_OFFSET: Kind = { unit: 'V', noun: 'a voltage', example: '40 mV' };
export const CURRENT: Kind = { unit: 'A', noun: 'a current', example: '1.2 A', above: 0 };
export const POWER: Kind = { unit: 'W', noun: 'a power', example: '15 W', above: 0 };
export const ENERGY: Kind = { unit: 'J', noun: 'an energy', example: '2 Wh', above: 0 };
export const TIME: Kind = { unit: 's', noun: 'a time', example: '5 min' };
/** From row to row of a log that holds no time. */
export const STEP_OF_ROWS: Kind = { ...TIME, example: '1 s', above: 0 };
/** A level as it is read, which may be below 0. */
export const SOUND: Kind = { unit: 'dB', noun: 'a sound level', example: '42.5 dB' };
const SOUND_LEVEL: Kind = { unit: 'dB', noun: 'a difference of sound levels', example: '0.1 dB', above: 0 };
const RATIO: Kind = { unit: '1', noun: 'a number or share', example: '0.1 %', above: 0, options: { bare: true } };

/** What a step (the resolution) of each quantity is measured in; quantities that are missing here have units of their own. */
export const STEP_KIND: Readonly<Partial<Record<QuantityKind, Kind>>> = {
  temperature: TEMPERATURE_STEP,
  ambient: TEMPERATURE_STEP,
  clock: { ...CLOCK, example: '1 MHz' },
  current: { ...CURRENT, example: '0.01 A' },
  voltage: { ...VOLTAGE, example: '10 mV' },
  power: { ...POWER, example: '0.1 W' },
  energy: { ...ENERGY, example: '10 mWh' },
  sound_level: SOUND_LEVEL,
  utilisation: RATIO,
  charge_level: RATIO,
  throttle_flag: RATIO,
};

/** Last words of free settings that name a measured thing: a bare number under them lacks its unit, elsewhere it is a count. */
const MEASURED_WORDS: Readonly<Record<string, Kind>> = {
  clock: CLOCK,
  frequency: CLOCK,
  voltage: VOLTAGE,
  offset: VOLTAGE_OFFSET,
  current: CURRENT,
  power: POWER,
  temperature: TEMPERATURE,
  time: TIME,
  duration: TIME,
  interval: TIME,
};

/** The kind that the last word of a free setting's name speaks of: `memory_clock` is a clock. */
export function kindByName(name: string): Kind | undefined {
  const word = name.slice(name.lastIndexOf('_') + 1);
  return Object.hasOwn(MEASURED_WORDS, word) ? MEASURED_WORDS[word] : undefined;
}
