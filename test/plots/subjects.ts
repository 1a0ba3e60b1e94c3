/** Invented runs for the tests of plots: a soak of idle, load and cool-down, with the figures that the project derives from it. */

import type { RunContext } from '../../src/figures/context.ts';
import { derive } from '../../src/figures/derive.ts';
import type { Channel, Log, QuantityKind } from '../../src/intake/log.ts';
import type { PlotSubject } from '../../src/plots/drawing/drawn.ts';
import type { Quantity } from '../../src/quantities/quantity.ts';
import type { PlotKind, PlotRequest } from '../../src/register/requests.ts';

export const PLACE = { file: 'content/notes/larch.md', line: 14, column: 1 };

export interface Shape {
  /** Rise at the end of the load, K. */
  readonly rise?: number;
  /** s */
  readonly idle?: number;
  readonly load?: number;
  readonly coolDown?: number;
  readonly step?: number;
  /** Stretch without rows, s. */
  readonly gap?: readonly [number, number];
  readonly limit?: number;
  /** Without a stated ambient. */
  readonly noAmbient?: boolean;
  readonly noPhases?: boolean;
  /** A measured room that warms by so many kelvin from end to end, in the stead of the stated ambient. */
  readonly warming?: number;
  readonly scatter?: number;
}

const AMBIENT = 22;
const TAU = 300;

/** A subject whose `soc` rises by one exponential of 300 s towards ambient + rise; `board` is its power, `clock` its clock. */
export function subject(alias: string, shape: Shape = {}): PlotSubject {
  const { rise = 40, idle = 300, load = 2400, coolDown = 300, step = 2, gap, limit = 80, scatter = 0.4 } = shape;
  const end = idle + load + coolDown;
  const times = Array.from({ length: Math.floor(end / step) + 1 }, (_, i) => i * step).filter(
    (t) => !gap || t < gap[0] || t > gap[1],
  );
  const noise = generator();
  // A room that warms evenly reaches the device through the same first-order lag as the load.
  const drift = (shape.warming ?? 0) / end;
  const felt = (t: number) => AMBIENT + drift * (t + TAU * Math.expm1(-t / TAU));
  const loaded = (t: number) => t >= idle && t < idle + load;
  const height = (t: number) => {
    if (t < idle) return 0;
    const top = rise * (1 - Math.exp(-Math.min(t - idle, load) / TAU));
    return loaded(t) ? top : top * Math.exp(-(t - idle - load) / TAU);
  };
  const channels = [
    channel(
      'soc',
      'temperature',
      '°C',
      times.map((t) => felt(t) + height(t) + scatter * (noise() - 0.5)),
      0.1,
    ),
    channel(
      'core_clock',
      'clock',
      'Hz',
      times.map((t) => (loaded(t) ? 2.4e9 : 0.6e9)),
      1e6,
    ),
    channel(
      'board',
      'power',
      'W',
      times.map((t) => (loaded(t) ? 7 : 2) + 0.2 * (noise() - 0.5)),
      0.01,
      { at: 'board input' },
    ),
    channel(
      'flag',
      'throttle_flag',
      '1',
      times.map((t) => (t > idle + 600 && loaded(t) ? 4 : 0)),
      1,
      { bits: { 2: 'hot' } },
    ),
    channel(
      'dead',
      'other',
      '1',
      times.map(() => Number.NaN),
      1,
    ),
  ];
  if (shape.warming !== undefined)
    channels.push(
      channel(
        'room',
        'ambient',
        '°C',
        times.map((t) => AMBIENT + drift * t),
        0.01,
      ),
    );
  const phases = shape.noPhases ? [] : phasesOf(idle, load, coolDown);
  const context: RunContext = {
    run: alias,
    device: { id: 'larch-2', throttleAt: { soc: exactly(limit, '°C') } },
    specimen: 'no-1',
    instruments: {},
    ...(shape.noAmbient || shape.warming !== undefined ? {} : { ambient: exactly(AMBIENT, '°C') }),
    setting: {},
    phases,
  };
  const log = logOf(times, channels, step);
  return { alias, title: `Run ${alias}`, log, derived: derive(log, context), context };
}

function phasesOf(idle: number, load: number, coolDown: number) {
  const ends = [0, idle, idle + load, idle + load + coolDown];
  return ['idle', 'load', 'cool-down'].map((name, i) => ({ name, from: ends[i]!, to: ends[i + 1]!, place: PLACE }));
}

export function channel(
  name: string,
  quantity: QuantityKind,
  unit: string,
  values: readonly number[],
  step: number,
  more = {},
): Channel {
  const missing = values.filter(Number.isNaN).length;
  return { name, quantity, column: name, unit, originalUnit: unit, values: Float64Array.from(values), missing, step, ...more };
}

export function logOf(times: readonly number[], channels: readonly Channel[], step: number): Log {
  return {
    file: 'data/larch-2/soak.csv',
    rows: times.length,
    lines: Int32Array.from(times, (_, row) => row + 2),
    time: { seconds: Float64Array.from(times), column: 'elapsed_s', format: 'elapsed', start: null, step, gaps: [] },
    channels,
    setAside: [],
    repairs: [],
    inferences: [],
    encoding: 'UTF-8',
    delimiter: ',',
  };
}

export function exactly(value: number, unit: string): Quantity {
  return { value, unit, parts: [] };
}

export function request(
  kind: PlotKind,
  subjects: readonly PlotSubject[],
  channels: readonly string[] = [],
  more: Partial<PlotRequest> = {},
): PlotRequest {
  const runs = subjects.map(({ alias }, slot) => ({ alias, run: alias, slot }));
  return { kind, id: `${kind}-1`, runs, channels, rise: false, place: PLACE, ...more };
}

/** A seeded generator of numbers from 0 to 1 (constants of Numerical Recipes, chapter 7, from memory). */
export function generator(): () => number {
  let state = 1;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
