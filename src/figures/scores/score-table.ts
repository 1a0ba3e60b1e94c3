/** Benchmark results of a run as typed rows. */
import type { Of } from '../absent.ts';

/** When a repeat began or ended: an instant, a civil time that names no zone, or a time since the log's first row. */
export type Moment =
  | { readonly kind: 'instant'; readonly epoch: number }
  | { readonly kind: 'local' }
  | { readonly kind: 'elapsed'; readonly seconds: number };

export interface Repeat {
  /** As the table has it, or the row's number within its test. */
  readonly name: string;
  /** In the test's unit; NaN where the table says that there was no result. */
  readonly value: number;
  /** One unit of the last digit written, in the test's unit. */
  readonly step: number;
  readonly window: { readonly start: Moment; readonly end: Moment } | null;
  /** Hz: the mean clock that the device delivered meanwhile, as the table states it. */
  readonly clock?: StatedReading;
  /** W: the mean power meanwhile, as the table states it. */
  readonly power?: StatedReading;
  /** What the table states of the value's uncertainty, in the test's unit. */
  readonly error?: { readonly u: number; readonly distribution?: 'rectangular' };
  readonly line: number;
}

/** A reading in a cell of its own, with one unit of its last digit. */
export interface StatedReading {
  readonly value: number;
  readonly step: number;
}

export interface ScoredTest {
  /** From its words, or the table's own. */
  readonly id: string;
  readonly title: string;
  /** Canonical where it is a known unit, else the author's word. */
  readonly unit: string;
  readonly better: 'higher' | 'lower';
  /** In the table's order; one or more. */
  readonly repeats: readonly Repeat[];
}

export interface Scores {
  /** Path as places have it: `data/…`. */
  readonly file: string;
  /** Columns of tests and values, where the file calls them otherwise than `test` and `value`. */
  readonly columns?: readonly string[];
  /** By first appearance. */
  readonly tests: readonly ScoredTest[];
}

/** What every figure of a test says of it. */
export function ofTest({ id, title, better }: ScoredTest): Of {
  return { test: id, title, better };
}
