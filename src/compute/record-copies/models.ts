/** What the pages of record copies print besides the copies themselves. */
import type { Link } from '../results.ts';

/** What is no longer as a record copy has it. */
export interface ChangedSince {
  readonly nothing: boolean;
  /** What became of the comparison, in sentences. */
  readonly comparison: readonly string[];
  /** Runs that the site no longer has. */
  readonly gone: readonly { readonly alias: string; readonly title: string }[];
  /** Logs and tables with another digest; '' where there is none any more, or was none. */
  readonly files: readonly (Was & { readonly run: string; readonly file: string })[];
  /** Settings, conditions, instruments and what else is stated; '' where it is not. */
  readonly stated: readonly (Was & { readonly run: string; readonly label: string })[];
  readonly figures: readonly ChangedFigures[];
  /** Figures whose definition, formula or source is another. */
  readonly methods: readonly { readonly name: string; readonly label: string }[];
}

interface Was {
  readonly was: string;
  readonly is: string;
}

/** Of one run, or of the comparison. */
export interface ChangedFigures {
  readonly of: string;
  readonly rows: readonly (Was & {
    readonly address: string;
    readonly label: string;
    readonly detail: string;
    /** By how much, in its own unit and in its standard uncertainties; '' where the two cannot be subtracted. */
    readonly by: string;
  })[];
  /** Figures that changed by less than is printed. */
  readonly finer: number;
}

/** A record copy in lists. */
export interface CopyRow {
  readonly link: Link;
  readonly date: string;
  /** Titles of its runs, as they were. */
  readonly runs: readonly string[];
}
