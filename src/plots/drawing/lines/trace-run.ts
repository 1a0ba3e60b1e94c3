/** One run as a trace draws it, whether from its log or from its series. */
import type { FigureName } from '../../../figures/catalogue.ts';
import type { QuantityKind } from '../../../intake/log.ts';
import type { SpanMeans } from './means.ts';
import type { Segment } from './segments.ts';

/** When a run begins, is loaded and ends, s since the first row of its log. */
export interface Timed {
  /** Start of the load; null where no row lies in such a phase. */
  readonly load: number | null;
  readonly begin: number;
  readonly end: number;
  readonly phases: readonly { readonly name: string; readonly from: number; readonly to: number }[];
}

export interface TraceRun extends Timed {
  /** '' on the run's own page. */
  readonly alias: string;
  readonly title: string;
  /** A figure of a channel as pages print it, or in the unit given; undefined where it is absent or not at hand. */
  readonly told: (figure: FigureName, channel: string, unit?: string) => string | undefined;
}

export interface TraceChannel {
  readonly name: string;
  /** Its name for readers. */
  readonly label: string;
  readonly quantity: QuantityKind;
  /** Canonical. */
  readonly unit: string;
  /** How finely readings are told apart, in that unit. */
  readonly step: number;
  /** Throttle limit in that unit. */
  readonly limit?: number;
  readonly readings: () => TraceReadings;
  /** Rise over ambient in K; null where no ambient is known. */
  readonly rise: () => TraceReadings | null;
}

/** Readings of a channel without the rows where it has none; flags are 1 for "now", else 0. */
export interface TraceReadings {
  /** s since the first row, never decreasing. */
  readonly t: Float64Array;
  readonly y: Float64Array;
  readonly segments: readonly Segment[];
  /** How many there were before they were thinned. */
  readonly count: number;
  /** `all`: these are all readings, so that means can be made of them; else the means that came with thinned ones, if there are any. */
  readonly means: 'all' | StoredMeans | null;
}

/** Means of x in s since the first row. */
export interface StoredMeans extends SpanMeans {
  /** s */
  readonly span: number;
}
