/** Settings tried on one specimen, and what came of each: what the figures of stability are made of. */
import type { Quantity } from '../../quantities/quantity.ts';
import { exact } from '../../quantities/uncertainty.ts';

export const OUTCOMES = [
  'no boot',
  'hung at boot',
  'hung under load',
  'wrong results',
  'restarted',
  'throttled',
  'passed',
] as const;
export type Outcome = (typeof OUTCOMES)[number];

/** What "passed" means: which test, how long, at which ambient. */
export interface PassCriterion {
  readonly test: string;
  /** s */
  readonly duration: number;
  /** As the author states it: "22.5 ± 1.0 °C". */
  readonly ambient: string;
}

export interface Attempt {
  readonly line: number;
  /** Hz */
  readonly clock: number;
  /** What its last digit counts, Hz, where it was written with zeros at its end. */
  readonly clockDigit?: number;
  /** V */
  readonly offset: number;
  readonly outcome: Outcome;
  readonly note: string;
  /** What passing this attempt means; null where neither the row nor the file says so. */
  readonly passing: PassCriterion | null;
}

export interface Ladder {
  readonly specimen: string;
  /** Path below the project folder. */
  readonly file: string;
  readonly attempts: readonly Attempt[];
  /** Columns of clock, voltage offset and outcome, as the header has them. */
  readonly columns: readonly string[];
}

/** The clock of an attempt or of a setting, as it is printed. */
export function clockQuantity({ clock, clockDigit }: Pick<Attempt, 'clock' | 'clockDigit'>): Quantity {
  return { ...exact(clock, 'Hz'), ...(clockDigit !== undefined && { lastDigit: clockDigit }) };
}

/** "60 mV", "-20 mV", "0 mV": how addresses name a voltage offset; to a thousandth of a millivolt. */
export function offsetName(volts: number): string {
  return `${Number((volts * 1000).toFixed(3)) + 0} mV`;
}

/** The same in sentences: with a minus sign. */
export function offsetWords(volts: number): string {
  return offsetName(volts).replace('-', '−');
}
