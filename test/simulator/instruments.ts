/** The invented instruments: what they add to the truth. One set of errors belongs to one set of instruments, not to one run. */
import { quantise } from './noise.ts';
import type { Random } from './random.ts';

/** What one instrument does to a true value: (1 + gain) × value + offset + white noise, then rounded to its step. */
export interface Instrument {
  /** Share of the reading. */
  readonly gain: number;
  /** In the unit of the reading. */
  readonly offset: number;
  /** Standard deviation of white noise, in the unit of the reading. */
  readonly noise: number;
  /** 0 for none. */
  readonly step: number;
}

export interface Instruments {
  /** The sensor on the die; its offset belongs to the specimen. */
  readonly die: Instrument;
  /** The thermocouple probe on the board. */
  readonly probe: Instrument;
  /** The room's thermometer. */
  readonly thermometer: Instrument;
  readonly voltage: Instrument;
  readonly current: Instrument;
}

/** Limits of error, all rectangular. */
export interface Limits {
  readonly die: number;
  readonly probe: number;
  readonly thermometer: number;
  /** Share of the reading; and digits of the last place. */
  readonly meterGain: number;
  readonly meterDigits: number;
  /** Step of the die sensor, °C. */
  readonly dieStep: number;
}

/** A set of instruments whose errors are drawn from within their limits. */
export function drawInstruments(random: Random, limits: Limits): Instruments {
  const meter = (step: number, noise: number): Instrument => ({
    gain: random.within(limits.meterGain),
    offset: random.within(limits.meterDigits * step),
    noise,
    step,
  });
  return {
    die: { gain: 0, offset: random.within(limits.die), noise: 0.3, step: limits.dieStep },
    probe: { gain: 0, offset: random.within(limits.probe), noise: 0.08, step: 0.1 },
    thermometer: { gain: 0, offset: random.within(limits.thermometer), noise: 0.04, step: 0.1 },
    voltage: meter(0.01, 0.004),
    current: meter(0.001, 0.002),
  };
}

/** One reading of a true value. */
export function read(instrument: Instrument, truth: number, random: Random): number {
  const seen = truth * (1 + instrument.gain) + instrument.offset + instrument.noise * random.normal();
  return quantise(seen, instrument.step);
}
