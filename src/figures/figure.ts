/** A derived quantity of a run or comparison: present with value and uncertainty, or absent with the reason. */
import type { Inference } from '../intake/log.ts';
import type { Quantity } from '../quantities/quantity.ts';
import type { FigureName } from './catalogue.ts';

/** Columns and rows that a figure was computed from. Rows are 1-based line numbers of the log, first and last. */
export interface From {
  /** Figures of runs that a figure of several runs was computed from: `larch-fast/load_power`. */
  readonly figures?: readonly string[];
  readonly columns: readonly string[];
  readonly rows: readonly [number, number] | null;
  /** Path below the project folder of the table that the columns are in, where it is not the run's log. */
  readonly file?: string;
  /** What it was computed from besides, in other logs of the run. */
  readonly others?: readonly FromFile[];
}

/** Columns and rows of a file that is not the run's first log. */
export interface FromFile {
  readonly columns: readonly string[];
  readonly rows: readonly [number, number] | null;
  readonly file: string;
}

/**
 * A figure of the catalogue, or what is made beside it: a difference has the definition of what it is a difference of, the ambient of a
 * load is a reading, and a chart draws the mean power of phases that have no figure of their own.
 */
export type NameOfFigure = FigureName | 'difference' | 'ambient' | 'mean_power';

export interface PresentFigure {
  readonly name: NameOfFigure;
  readonly quantity: Quantity;
  /** 95 % interval where it is not the one that follows from parts and dof (a count, an extreme, a lopsided fit). */
  readonly interval?: readonly [number, number];
  readonly from: From;
  /** How what was not declared was inferred. */
  readonly inferred?: readonly string[];
  /** What else it says: channel, phase, at, averaging, sampling, verdict … */
  readonly of?: Readonly<Record<string, string | number | boolean>>;
}

export const ABSENT_CODES = [
  'no-channel',
  'no-phase',
  'no-instrument',
  'no-condition',
  'no-rating',
  'too-short',
  'not-steady',
  'undecided',
  'load-changed',
  'no-fit',
  'not-throttled',
  'not-observed',
  'different-places',
  'different-clocks',
  'out-of-range',
  'no-readings',
  'not-observed',
  'operand-absent',
  'low-emissivity',
  'none-passed',
  'none-failed',
] as const;
export type AbsentCode = (typeof ABSENT_CODES)[number];

export interface AbsentFigure {
  readonly name: NameOfFigure;
  readonly absent: AbsentCode;
  /** A sentence for readers, with its full stop. */
  readonly why: string;
  /** What can still be said: the figure is above (or below) this. */
  readonly bound?: { readonly relation: '>' | '<'; readonly value: number; readonly unit: string };
  readonly of?: Readonly<Record<string, string | number | boolean>>;
}

export type Figure = PresentFigure | AbsentFigure;

export function isPresent(figure: Figure): figure is PresentFigure {
  return 'quantity' in figure;
}

/** A stretch of a log in seconds since its first row, half open; the last one closed. Rows are indices, `toRow` exclusive. */
export interface Phase {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly fromRow: number;
  readonly toRow: number;
  readonly inferred: boolean;
  /** How far its edges may be off, s, where they were told by a temperature, which bends slowly. */
  readonly sharpness?: number;
}

/** The first word of an address: its figure. */
type Head<Address extends string> = Address extends `${infer Name}.${string}` ? Name : Address;

/** An address as it is written out in the code: an error where its figure is none of the catalogue's. What is known only when it runs is let through. */
export type Known<Address extends string> =
  string extends Head<Address> ? Address : Head<Address> extends NameOfFigure ? Address : never;

/** The figure that an address names: its first word. What another version wrote may be a name that this catalogue does not have; it is printed all the same. */
export function nameIn(address: string): NameOfFigure {
  return address.split('.', 1)[0] as NameOfFigure;
}

/** Figures by their addresses without alias, in the order in which they were made. */
export interface FigureMap extends Omit<ReadonlyMap<string, Figure>, 'get' | 'has'> {
  get<Address extends string>(address: Address & Known<Address>): Figure | undefined;
  has<Address extends string>(address: Address & Known<Address>): boolean;
}

/** All figures of one run. Keys are addresses without the alias: `peak_temperature`, `peak_temperature.ssd`; the primary channel's stands under the bare name. */
export interface RunFigures {
  readonly figures: FigureMap;
  readonly phases: readonly Phase[];
  readonly inferences: readonly Inference[];
}
