/** The page of a device: its runs over time, the settings tried. */
import type { DataFile } from './data-file.ts';
import type { ConditionRow, Link, Marks, PagePlot, ShownCaution, ShownFigure } from './shared.ts';

export interface DeviceModel {
  readonly kind: 'device';
  readonly id: string;
  readonly title: string;
  readonly maker: string;
  readonly marks: Marks;
  readonly body: string;
  readonly ratings: readonly ConditionRow[];
  readonly specimens: readonly {
    readonly alias: string;
    readonly runs: readonly {
      readonly link: Link;
      readonly date: string;
      readonly setting: string;
      readonly figures: readonly ShownFigure[];
    }[];
    /** One table for each setting that was run more than once under like conditions. */
    readonly timeline: readonly TimelineModel[];
  }[];
  readonly attempts: readonly AttemptsModel[];
  /** What to beware of, in one line; '' where nothing calls for one. */
  readonly beware: string;
  readonly cautions: readonly ShownCaution[];
  readonly notes: readonly Link[];
  readonly figuresFile: string;
}

/** Runs of one specimen alike but for date, firmware and ambient, by date. */
export interface TimelineModel {
  /** "clock 2.2 GHz, voltage offset 0 mV"; '' where none is stated. */
  readonly setting: string;
  /** Other conditions that all of them share. */
  readonly conditions: readonly ConditionRow[];
  readonly columns: readonly Pick<ShownFigure, 'name' | 'label'>[];
  readonly rows: readonly {
    readonly link: Link;
    readonly date: string;
    /** '' where it is not stated. */
    readonly firmware: string;
    /** One for each column. */
    readonly cells: readonly {
      readonly figure: ShownFigure;
      /** Less the first row's, its verdict in `detail`; null in the first row, and where one of the two is absent. */
      readonly difference: ShownFigure | null;
    }[];
  }[];
}

/** Settings tried on a specimen, and what came of each. */
export interface AttemptsModel {
  readonly id: string;
  readonly title: string;
  readonly specimen: string;
  /** What "passed" means; '' where the table says it row by row. */
  readonly passed: string;
  readonly rows: readonly { readonly clock: string; readonly offset: string; readonly outcome: string; readonly note: string }[];
  readonly figures: readonly ShownFigure[];
  readonly plot: PagePlot | null;
  readonly file: string;
  /** The table itself. */
  readonly data: readonly DataFile[];
}
