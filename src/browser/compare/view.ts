/** What a reader looks at on the page of free comparison: all of it stands in the address. */
import type { QuantityKind } from '../../intake/log.ts';

export interface View {
  /** Ids in the reader's order, each once; also of runs that are gone. */
  readonly runs: readonly string[];
  /** One of `runs`; null: the first that is there. */
  readonly reference: string | null;
  /** Plots, one below the other. */
  readonly show: readonly ShownQuantity[];
  readonly as: Axis;
  /** What is not named here stands in the unit that fits its size. */
  readonly units: Readonly<Partial<Record<QuantityKind, string>>>;
  /** Ends of the time axis, s since its 0; null: as far as the readings go. */
  readonly from: number | null;
  readonly to: number | null;
}

/** Temperatures as they were read, or as rise over the ambient. */
export type Axis = 'absolute' | 'rise';

/** A quantity, of its primary channel; or of the channel of that name. */
export interface ShownQuantity {
  readonly quantity: QuantityKind;
  readonly channel: string | null;
}

/** Quantities that can be drawn, with their names for readers. */
export const QUANTITIES: Readonly<Record<QuantityKind, string>> = {
  temperature: 'Temperature',
  ambient: 'Ambient temperature',
  clock: 'Clock',
  power: 'Power',
  current: 'Current',
  voltage: 'Voltage',
  energy: 'Energy',
  fan: 'Fan',
  sound_level: 'Sound level',
  utilisation: 'Utilisation',
  charge_level: 'Charge level',
  throttle_flag: 'Throttle flag',
  other: 'Other',
};

/** Units to choose from besides the one that fits, by quantity; degrees are written without their sign in addresses. */
export const UNITS: Readonly<Partial<Record<QuantityKind, readonly string[]>>> = {
  temperature: ['°F'],
  clock: ['GHz', 'MHz'],
  power: ['W', 'mW'],
  current: ['A', 'mA'],
  voltage: ['V', 'mV'],
};

/** Most plots on the page: each is drawn anew at every change. */
export const MOST_PLOTS = 4;

export const EMPTY_VIEW: View = {
  runs: [],
  reference: null,
  show: [{ quantity: 'temperature', channel: null }],
  as: 'absolute',
  units: {},
  from: null,
  to: null,
};
