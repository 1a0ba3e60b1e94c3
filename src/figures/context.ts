/** What figures need to know of a run besides its log: settings, conditions, ratings, instruments. Built by the register. */
import type { MeasuredAt, QuantityKind } from '../intake/log.ts';
import type { Place } from '../problem.ts';
import type { Accuracy } from '../quantities/accuracy.ts';
import type { Quantity } from '../quantities/quantity.ts';
import type { HandReading } from './hand/hand-reading.ts';

export interface RunContext {
  /** Run id, used in source ids. */
  readonly run: string;
  readonly device: {
    readonly id: string;
    readonly ratedClock?: Quantity;
    readonly throttleAt: Readonly<Record<string, Quantity>>;
    readonly power?: 'mains' | 'adapter' | 'battery';
  };
  readonly specimen: string;
  readonly instruments: Readonly<Record<string, InstrumentFacts>>;
  readonly ambient?: Quantity;
  /** Sound level of the room with the device off, dB, and where the microphone stood, in words. */
  readonly background?: Quantity;
  readonly microphone?: string;
  /** Stated supply voltage, and where. */
  readonly supply?: { readonly voltage: Quantity; readonly at?: MeasuredAt };
  readonly setting: { readonly clock?: Quantity; readonly voltageOffset?: Quantity };
  /** Declared phases in order, or `auto`: the load edge is then inferred. */
  readonly phases: 'auto' | readonly DeclaredPhase[];
  /** What was read off displays, where anything was. */
  readonly readings?: readonly HandReading[];
  /** Name of the steady-state criterion; the default when absent. */
  readonly steady?: string;
}

export interface DeclaredPhase {
  readonly name: string;
  readonly from: number;
  /** Infinity: to the end of the log. */
  readonly to: number;
  readonly place: Place;
}

export interface InstrumentFacts {
  readonly id: string;
  readonly title: string;
  readonly connected?: 'mains side' | 'low voltage side';
  /** True where the sensor is part of the specimen (a die sensor): its offset is shared within one specimen only. */
  readonly partOfSpecimen: boolean;
  /** By quantity; a quantity that is missing here has no stated accuracy. */
  readonly accuracy: Readonly<Partial<Record<QuantityKind, Accuracy>>>;
  readonly resolution: Readonly<Partial<Record<QuantityKind, Quantity>>>;
  /** Added to every reading of the quantity: what a calibration certificate states. */
  readonly correction?: Readonly<Partial<Record<QuantityKind, Correction>>>;
  /** Between which readings the instrument is accurate, as stated; a tolerance class has a range of its own besides. */
  readonly accurate?: Readonly<Partial<Record<QuantityKind, AccurateRange>>>;
}

export interface Correction {
  /** In the canonical unit; K for temperatures. */
  readonly value: number;
  readonly unit: string;
  /** Standard uncertainty, in `unit`. */
  readonly u: number;
  /** Said where `u` was stated as limits. */
  readonly distribution?: 'rectangular';
  /** As the author wrote it. */
  readonly text: string;
}

/** Both ends included, in the canonical unit; an end that is not there is open. */
export interface AccurateRange {
  readonly from?: number;
  readonly to?: number;
}
