/**
 * All that the page of a comparison prints, gathered once: from the runs as they are now, or read back from a record copy. JSON as it
 * stands, so that a copy prints by the same way as the living comparison.
 */
import type { RunSeries } from '../../plots/series.ts';
import type { ConditionRow, ShownCaution } from '../results.ts';

export interface Gathered {
  /** Of the comparison that it is, or was made from. */
  readonly id: string;
  readonly title: string;
  /** Alias of the reference run. */
  readonly reference: string;
  /** In the author's order. */
  readonly runs: readonly GatheredRun[];
  /** As in `comparisons/<id>/figures.json`. */
  readonly sources: PublishedSources;
  readonly figures: PublishedFigures;
  /** For each figure's name the digest of its definition, formula and source: which version of a method made it. */
  readonly methods: Readonly<Record<string, string>>;
}

export interface GatheredRun {
  readonly alias: string;
  readonly run: string;
  readonly title: string;
  readonly date: string;
  readonly device: { readonly id: string; readonly title: string; readonly maker: string; readonly invented: boolean };
  readonly specimen: string;
  readonly setting: readonly ConditionRow[];
  readonly conditions: readonly ConditionRow[];
  readonly instruments: readonly { readonly id: string; readonly title: string; readonly accuracy: string }[];
  readonly log: { readonly file: string; readonly sha256: string; readonly rows: number; readonly span_s: number };
  readonly tables: readonly { readonly file: string; readonly sha256: string }[];
  /** As in `runs/<id>/figures.json`. */
  readonly sources: PublishedSources;
  readonly figures: PublishedFigures;
  readonly series: RunSeries;
  readonly cautions: readonly ShownCaution[];
}

export type PublishedSources = Readonly<Record<string, { readonly title: string; readonly dof: number | null }>>;

/** By address without alias; each as in `figures.json`. */
export type PublishedFigures = Readonly<Record<string, Readonly<Record<string, unknown>>>>;
