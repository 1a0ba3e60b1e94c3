/** Logs and contexts made in memory, for tests of figures. All of it is invented. */

import type { FigureName } from '../../src/figures/catalogue.ts';
import type { InstrumentFacts, RunContext } from '../../src/figures/context.ts';
import type { Figure, PresentFigure } from '../../src/figures/figure.ts';
import { isPresent } from '../../src/figures/figure.ts';
import type { Channel, Log, QuantityKind } from '../../src/intake/log.ts';
import type { Accuracy } from '../../src/quantities/accuracy.ts';

const UNITS: Readonly<Record<QuantityKind, string>> = {
  temperature: '°C',
  ambient: '°C',
  clock: 'Hz',
  current: 'A',
  voltage: 'V',
  power: 'W',
  energy: 'J',
  throttle_flag: '1',
  fan: '1',
  sound_level: 'dB',
  utilisation: '1',
  charge_level: '1',
  other: '1',
};

export type ChannelSketch = Partial<Omit<Channel, 'values' | 'quantity'>> & {
  readonly quantity: QuantityKind;
  /** Of the row's time in seconds, or ready values. */
  readonly values: ((t: number, row: number) => number) | ArrayLike<number>;
};

/** A log with the given instants and channels; the column of a channel is its name in capitals. */
export function logOf(seconds: ArrayLike<number>, channels: Readonly<Record<string, ChannelSketch>>): Log {
  const time = Float64Array.from(seconds);
  return {
    file: 'invented/log.csv',
    rows: time.length,
    lines: Int32Array.from(time, (_, row) => row + 2),
    time: { seconds: time, column: 'time', format: 'elapsed', start: null, step: medianStep(time), gaps: [] },
    channels: Object.entries(channels).map(([name, sketch]) => channelOf(name, sketch, time)),
    setAside: [],
    repairs: [],
    inferences: [],
    encoding: 'UTF-8',
    delimiter: ',',
  };
}

function channelOf(name: string, { values, ...sketch }: ChannelSketch, time: Float64Array): Channel {
  const column = typeof values === 'function' ? time.map((t, row) => values(t, row)) : Float64Array.from(values);
  return {
    name,
    column: name.toUpperCase(),
    unit: UNITS[sketch.quantity],
    originalUnit: UNITS[sketch.quantity],
    missing: column.filter(Number.isNaN).length,
    step: null,
    ...sketch,
    values: column,
  };
}

function medianStep(time: Float64Array): number | null {
  if (time.length < 2) return null;
  const steps = time.slice(1).map((t, i) => t - time[i]!);
  return steps.sort()[Math.floor(steps.length / 2)]!;
}

/** Instants 0, step, 2 step … up to and including `end`. */
export function every(step: number, end: number): Float64Array {
  return Float64Array.from({ length: Math.floor(end / step + 1e-9) + 1 }, (_, row) => row * step);
}

const PLACE = { file: 'content/runs/invented.md', line: 1, column: 1 };

export function phase(name: string, from: number, to: number) {
  return { name, from, to, place: PLACE };
}

export function contextOf(parts: Partial<RunContext> = {}): RunContext {
  return {
    run: 'soak',
    device: { id: 'larch', throttleAt: {} },
    specimen: 'no-1',
    instruments: {},
    setting: {},
    phases: [phase('load', 0, Number.POSITIVE_INFINITY)],
    ...parts,
  };
}

/** An instrument with limits ± absolute and a share of the reading, for one quantity. */
export function instrumentOf(
  id: string,
  quantity: QuantityKind,
  limits: Partial<Accuracy>,
  more: Partial<InstrumentFacts> = {},
): InstrumentFacts {
  const accuracy: Accuracy = { ofReading: 0, absolute: 0, digits: 0, coverage: 'rectangular', text: 'invented', ...limits };
  return { id, title: id, partOfSpecimen: false, accuracy: { [quantity]: accuracy }, resolution: {}, ...more };
}

/** The figure at an address, which must be present. */
export function presentAt(figures: ReadonlyMap<string, Figure>, address: string): PresentFigure {
  const figure = figures.get(address);
  if (!figure) throw new Error(`no figure at ${address}: ${[...figures.keys()].join(' ')}`);
  if (!isPresent(figure)) throw new Error(`${address} is absent: ${figure.why}`);
  return figure;
}

/** The exact step response of checks against closed forms: A = 40 K, τ = 600 s, from 22 °C. */
export const STEP = { asymptote: 62, amplitude: 40, timeConstant: 600 };
export const stepAt = (t: number): number => STEP.asymptote - STEP.amplitude * Math.exp(-t / STEP.timeConstant);

/** Relative difference of two numbers, for tolerances that do not depend on the unit. */
export const apart = (a: number, b: number): number => Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b), Number.MIN_VALUE);

/** Repeatable noise, uniform in ± 0.5 (a linear congruential generator; D. E. Knuth, The Art of Computer Programming 2, from memory). */
export function noise(seed = 1): () => number {
  let state = seed;
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return state / 4294967296 - 0.5;
  };
}

/** A figure whose one source is its own scatter, in a run of that name. */
export function instrumentless(name: FigureName, value: number, unit: string, u: number, run: string): PresentFigure {
  const source = { id: `run:${run}/${name}/sampling`, title: 'invented scatter', dof: null };
  return { name, quantity: { value, unit, parts: [{ source, share: u }] }, from: { columns: [], rows: null } };
}
