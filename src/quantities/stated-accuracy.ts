/** What a data sheet states of an instrument's error. */
import type { Coverage } from './coverage.ts';

/** Limits (rectangular unless `coverage` says otherwise): the sum of the terms bounds the error. */
export interface Accuracy {
  /** Share of the reading: 0.005 for 0.5 %. */
  readonly ofReading: number;
  /** Absolute limit in the canonical unit (K for temperatures). */
  readonly absolute: number;
  /** Number of last digits of the display; times the resolution. */
  readonly digits: number;
  /** How the limits turn into a standard uncertainty: ÷ √3, ÷ k, or as they are. */
  readonly coverage: Coverage;
  /** As the author wrote it. */
  readonly text: string;
  /** Canonical unit of `absolute` (K for temperatures), where the statement names one: it must fit the quantity. */
  readonly unit?: string;
  /** True: the larger of the two terms is the limit, not their sum. */
  readonly larger?: boolean;
  /** Readings for which the statement holds, in the canonical unit, both ends included; without it all. */
  readonly range?: readonly [number, number];
}
