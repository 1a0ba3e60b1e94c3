/** What a simulation is told, and what it answers. Temperatures in °C, everything else in SI units. */
import type { GovernorOptions } from './governor.ts';
import type { Instruments, Limits } from './instruments.ts';
import type { PowerModel } from './power.ts';
import type { Moment } from './truth.ts';
import type { TwoMass } from './two-mass.ts';

/** One specimen of an invented device. */
export interface Specimen {
  readonly network: TwoMass;
  readonly power: PowerModel;
  readonly governor: GovernorOptions;
}

export interface Setting {
  /** Hz. */
  readonly clock: number;
  /** V. */
  readonly voltageOffset: number;
  /** A clock above the setting for the first seconds of the load. */
  readonly boost?: { readonly clock: number; readonly seconds: number };
}

/** The three stretches of a soak, s. */
export interface Schedule {
  readonly idle: number;
  readonly load: number;
  readonly coolDown: number;
}

export interface Room {
  /** At the first row. */
  readonly start: number;
  /** By how much it warms over the whole log, K. */
  readonly warming: number;
  /** Standard deviation of its wandering about that, K. */
  readonly wander: number;
}

export interface Supply {
  /** Without load, V. */
  readonly voltage: number;
  /** Of cable and adapter, Ω. */
  readonly resistance: number;
  /** Amplitude of the ripple, V; and its period as the meter sees it, s. */
  readonly ripple: number;
  readonly ripplePeriod: number;
}

/** The device restarts: no rows, no load; then the load goes on. Seconds since the first row. */
export interface Restart {
  readonly at: number;
  readonly length: number;
}

export interface Options {
  readonly seed: number;
  readonly specimen: Specimen;
  readonly setting: Setting;
  readonly schedule: Schedule;
  readonly room: Room;
  readonly supply: Supply;
  /** Between two rows, s: a multiple of half a second. */
  readonly every: number;
  /** Instruments with errors of their own; otherwise drawn from `limits` with this run's seed. */
  readonly instruments?: Instruments;
  readonly limits: Limits;
  /** Wandering of the workload: standard deviation as a share of the switching power, and correlation time, s. */
  readonly workload: { readonly wander: number; readonly memory: number };
  /** Share of the probe's readings that are lost. */
  readonly lost?: number;
  readonly restart?: Restart;
  /** Stretch in which the logger sleeps while the load goes on. */
  readonly pause?: Restart;
}

/** One row as the logger would write it; NaN where a reading was lost. */
export interface Reading {
  /** Since the first row, s. */
  readonly elapsed: number;
  readonly die: number;
  readonly board: number;
  readonly room: number;
  readonly clock: number;
  readonly throttled: boolean;
  readonly voltage: number;
  readonly current: number;
}

/** Averages over a phase, of the true values, row by row. */
export interface PhaseTruth {
  readonly power: number;
  readonly clock: number;
  readonly room: number;
  /** J, over the whole phase, restart included. */
  readonly energy: number;
  readonly peakDie: number;
  /** Means of its last five minutes. */
  readonly end: {
    readonly die: number;
    readonly board: number;
    readonly room: number;
    readonly clock: number;
    readonly power: number;
  };
}

/** What no log tells. */
export interface Truth {
  /** Where the load would end up, unthrottled and without noise, in the mean room of the load: die, board, and power of the whole device. */
  readonly steady: { readonly die: number; readonly board: number; readonly power: number };
  /** Time constants at that steady state, leakage included, s: short and long. */
  readonly timeConstants: readonly [number, number];
  readonly idle: PhaseTruth;
  readonly load: PhaseTruth;
  /** Seconds after the start of the load at which the governor first stepped down, or null. */
  readonly firstThrottle: number | null;
  /** Share of the load's time below the clock of the setting. */
  readonly throttledShare: number;
  readonly instruments: Instruments;
}

export interface Simulated {
  readonly rows: readonly Reading[];
  /** The true state every half second. */
  readonly moments: readonly Moment[];
  readonly truth: Truth;
}
