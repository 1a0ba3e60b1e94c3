/** An instrument's accuracy as data sheets state it: `0.5 % + 2 digits`, `± 0.5 °C`. */
import { standardOfHalfWidth } from './coverage.ts';
import type { Accuracy } from './stated-accuracy.ts';

export { parseAccuracy } from './parse-accuracy.ts';
export type { Accuracy } from './stated-accuracy.ts';

/** Standard uncertainties of one reading. */
export interface StandardOf {
  /** In proportion to the reading, and of its sign: the share of source `instrument:<id>/<quantity>/gain`. */
  readonly gain: number;
  /** The same for all readings: the share of source `instrument:<id>/<quantity>/offset`. */
  readonly offset: number;
}

/**
 * Standard uncertainties that an accuracy gives a reading, by source. The terms of a data sheet limit two errors, of gain and of
 * offset, each taken as rectangular and independent of the other (JCGM 100:2008, 4.3.7 and 5.1.2). Of `larger` statements only the
 * term that is larger at this reading counts. The offset is at least resolution/√12 (JCGM 100:2008, F.2.2.1).
 * Units: `reading` and `resolution` in the canonical unit, results too (K where that is °C).
 */
export function standardOf(accuracy: Accuracy, reading: number, resolution = 0): StandardOf {
  const gainLimit = accuracy.ofReading * reading;
  const offsetLimit = accuracy.absolute + accuracy.digits * resolution;
  const gainCounts = !accuracy.larger || Math.abs(gainLimit) > offsetLimit;
  const offsetCounts = !accuracy.larger || !gainCounts;
  return {
    gain: gainCounts ? standardOfHalfWidth(gainLimit, accuracy.coverage) : 0,
    offset: Math.max(offsetCounts ? standardOfHalfWidth(offsetLimit, accuracy.coverage) : 0, resolution / Math.sqrt(12)),
  };
}

/** The limit of error at a reading, as the statement has it before any division: for tables and tests. Unit as `absolute`. */
export function limitOf(accuracy: Accuracy, reading: number, resolution = 0): number {
  const gain = Math.abs(accuracy.ofReading * reading);
  const offset = accuracy.absolute + accuracy.digits * resolution;
  return accuracy.larger ? Math.max(gain, offset) : gain + offset;
}
