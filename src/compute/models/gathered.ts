/**
 * All that the page of a comparison prints, gathered once: from the runs as they are now, or read back from a record copy. JSON as it
 * stands, so that a copy prints by the same way as the living comparison.
 */
import type { RunSeries } from '../../plots/data/series.ts';
import type { ConditionRow, ShownCaution } from './shared.ts';

/** Its figures are those of `comparisons/<id>/figures.json`. */
export interface Gathered extends PublishedMap {
  /** Of the comparison that it is, or was made from. */
  readonly id: string;
  readonly title: string;
  /** Alias of the reference setting, which its first run bears too. */
  readonly reference: string;
  /** In the author's order. */
  readonly runs: readonly GatheredRun[];
  /** Aliases of the runs of each setting, by the setting's alias; left out where each setting has one run. */
  readonly settings?: Readonly<Record<string, readonly string[]>>;
  /** Groups of other repeats of the specimen, which say how runs lie apart; left out where there are none. */
  readonly repeats?: readonly (readonly GatheredRepeat[])[];
  /** For each figure's name the digest of its definition, formula and source: which version of a method made it. */
  readonly methods: Readonly<Record<string, string>>;
}

/** A run of which nothing but its figures counts. */
export interface GatheredRepeat extends PublishedMap {
  readonly run: string;
  readonly title: string;
  readonly device: string;
  readonly specimen: string;
}

/** Its figures are those of `runs/<id>/figures.json`. */
export interface GatheredRun extends PublishedMap {
  readonly alias: string;
  readonly run: string;
  readonly title: string;
  readonly date: string;
  readonly device: { readonly id: string; readonly title: string; readonly maker: string; readonly invented: boolean };
  readonly specimen: string;
  readonly setting: readonly ConditionRow[];
  readonly conditions: readonly ConditionRow[];
  /** Mean over the load as a figure `ambient` of its own, measured where it was logged (its `of` says so), else as stated; empty where neither is. */
  readonly ambient: PublishedMap;
  readonly instruments: readonly { readonly id: string; readonly title: string; readonly accuracy: string }[];
  /** What was logged, and by what; '' where no instrument or place is stated. */
  readonly channels: readonly {
    readonly name: string;
    readonly quantity: string;
    readonly at: string;
    readonly instrument: string;
  }[];
  readonly log: { readonly file: string; readonly sha256: string; readonly rows: number; readonly span_s: number };
  readonly tables: readonly { readonly file: string; readonly sha256: string }[];
  readonly series: RunSeries;
  readonly cautions: readonly ShownCaution[];
}

export type PublishedSources = Readonly<
  Record<string, { readonly title: string; readonly dof: number | null; readonly distribution?: 'rectangular' }>
>;

/** By address without alias; each as in `figures.json`. */
export type PublishedFigures = Readonly<Record<string, Readonly<Record<string, unknown>>>>;

export interface PublishedMap {
  readonly sources: PublishedSources;
  readonly figures: PublishedFigures;
}
