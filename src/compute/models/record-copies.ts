/** What the pages of record copies print besides the copies themselves. */
import type { ComparisonModel } from './comparison.ts';
import type { SharePicture } from './share.ts';
import type { Link } from './shared.ts';

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

/** A record copy, as it prints for ever, and what changed since. */
export interface RecordCopyModel {
  readonly kind: 'record-copy';
  readonly id: string;
  readonly title: string;
  /** The day as of which it stands. */
  readonly date: string;
  /** Its permalink, below the base. */
  readonly path: string;
  /** The copy itself, with the digest of its bytes. */
  readonly file: string;
  readonly sha256: string;
  /** From the copy alone. */
  readonly own: ComparisonModel;
  /** The comparison that it was made from, where the site still has it. */
  readonly living: Link | null;
  readonly since: ChangedSince;
  readonly share: SharePicture | null;
}

/** All record copies, newest first. */
export interface RecordCopiesModel {
  readonly kind: 'record-copies';
  readonly invented: boolean;
  readonly rows: readonly CopyRow[];
}
