/** What is drawn of one run: thinned readings on its own time axis. JSON as it stands: `runs/<id>/series.json`, and part of a record copy. */
import type { QuantityKind } from '../../intake/log.ts';

export interface RunSeries {
  readonly format: 1;
  readonly run: string;
  /** Start of the load, s since the log's first row; null where there is no load phase. */
  readonly load: number | null;
  /** s from the log's first row to its last. */
  readonly span: number;
  readonly phases: readonly { readonly name: string; readonly from: number; readonly to: number; readonly inferred: boolean }[];
  readonly channels: readonly SeriesChannel[];
}

export interface SeriesChannel extends SeriesLine {
  readonly name: string;
  /** Its name for readers, where the author gives one. */
  readonly label?: string;
  readonly quantity: QuantityKind;
  /** Canonical. */
  readonly unit: string;
  readonly at?: string;
  /** Decimals of the readings in that unit. */
  readonly decimals: number;
  /** How finely the readings are told apart, in that unit, where that is known. */
  readonly step?: number;
  /** Readings that the log has, before they were thinned. */
  readonly readings?: number;
  /** Throttle limit in that unit. */
  readonly limit?: number;
  /** Of a temperature whose ambient is known: rise over it in K, thinned for itself. */
  readonly rise?: SeriesLine;
}

export interface SeriesPoints {
  /** s since the log's first row, ascending. */
  readonly t: readonly number[];
  readonly y: readonly number[];
  /** Positions at which the line begins anew after a gap; without 0. */
  readonly breaks: readonly number[];
}

export interface SeriesLine extends SeriesPoints {
  /** Where the readings scatter: means of all of them, not of the thinned ones. */
  readonly means?: SeriesMeans;
}

export interface SeriesMeans extends SeriesPoints {
  /** Each is a mean over this time, s, counted from the start of the load. */
  readonly span: number;
  /** Median range of the readings within a span, in the unit of the line. */
  readonly scatter: number;
}
