/** What a person read off a display, and which figure each reading makes. */
import type { MeasuredAt, QuantityKind } from '../../intake/log.ts';
import type { Place } from '../../problem.ts';
import type { FigureName } from '../catalogue.ts';

export const HAND_QUANTITIES = [
  'temperature',
  'current',
  'voltage',
  'power',
  'energy',
  'clock',
  'sound_level',
] as const satisfies readonly QuantityKind[];
export type HandQuantity = (typeof HAND_QUANTITIES)[number];

/** What the display stood for: its level at the time, the highest that it showed, or where it settled. */
export const HAND_SHOWS = ['level', 'highest', 'settled'] as const;
export type HandShows = (typeof HAND_SHOWS)[number];

export interface HandReading {
  readonly quantity: HandQuantity;
  /** As read, in the canonical unit: one value, or one for each time that it was read. */
  readonly values: readonly number[];
  /** How often it was read; more than the values where all showed the same. */
  readonly times: number;
  /** Step of the display in the canonical unit (K for temperatures), where the author states it. */
  readonly step?: number;
  /** What the last digit counts, as it was written. */
  readonly lastDigit: number;
  /** Null of the whole run. */
  readonly phase: string | null;
  readonly shows: HandShows;
  readonly at?: MeasuredAt;
  readonly instrument?: string;
  /** Tells readings of one kind apart in addresses; undefined of the only one. */
  readonly name?: string;
  /** As the author wrote it. */
  readonly text: string;
  readonly place: Place;
}

/** Canonical unit of each. */
export const HAND_UNITS: Readonly<Record<HandQuantity, string>> = {
  temperature: '°C',
  current: 'A',
  voltage: 'V',
  power: 'W',
  energy: 'J',
  clock: 'Hz',
  sound_level: 'dB',
};

type Kind = Pick<HandReading, 'quantity' | 'phase' | 'shows'>;

const OF_IDLE: Readonly<Partial<Record<HandQuantity, FigureName>>> = {
  temperature: 'idle_temperature',
  current: 'idle_current',
  power: 'idle_power',
};
const OF_LOAD: Readonly<Partial<Record<HandQuantity, Readonly<Partial<Record<HandShows, FigureName>>>>>> = {
  temperature: { level: 'end_temperature', highest: 'peak_temperature', settled: 'steady_temperature' },
  current: { level: 'load_current' },
  power: { level: 'load_power', highest: 'peak_power' },
  clock: { level: 'mean_clock' },
  sound_level: { level: 'sound_level', highest: 'highest_sound_level' },
};

/** The figure that a reading makes; undefined where none is made of such a reading. A voltage makes a power, with a current. */
export function figureOfReading({ quantity, phase, shows }: Kind): FigureName | undefined {
  if (quantity === 'energy') return shows === 'level' ? 'energy' : undefined;
  if (phase === 'load') return OF_LOAD[quantity]?.[shows];
  return phase === 'idle' && shows === 'level' ? OF_IDLE[quantity] : undefined;
}

/** What readings of a quantity there can be, for messages: "of the idle or load phase". */
export function phasesOfReading(quantity: HandQuantity): string {
  if (quantity === 'energy') return 'of a phase, or of the whole run without one';
  return OF_IDLE[quantity] || quantity === 'voltage' ? 'of the phase `idle` or `load`' : 'of the phase `load`';
}
