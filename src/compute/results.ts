/** What pages see: everything they print, computed; each kind of page has its model below models/. The reader is in `read-results.ts`. */

import type { Problem } from '../problem.ts';
import type { AboutModel } from './models/about.ts';
import type { CompareModel, ComparisonModel } from './models/comparison.ts';
import type { DeviceModel } from './models/device.ts';
import type { RunsModel, SearchModel } from './models/discovery.ts';
import type { GuideModel } from './models/guide.ts';
import type { HomeModel } from './models/home.ts';
import type { LedgerModel } from './models/ledger.ts';
import type { AccuracyModel, MethodModel } from './models/method.ts';
import type { NoteModel } from './models/note.ts';
import type { RecordCopiesModel, RecordCopyModel } from './models/record-copies.ts';
import type { RunModel } from './models/run.ts';
import type { PrompterModel, ScriptModel } from './models/script.ts';
import type { VerifyModel } from './models/verify.ts';

export type { AboutModel } from './models/about.ts';
export type { ComparedCell, ComparedFigure, ComparedTable, CompareModel, ComparisonModel, Finding } from './models/comparison.ts';
export type { CorrectedTogether, FeedModel, Feeds, PrintedCorrection } from './models/corrections.ts';
export type { AttemptsModel, DeviceModel, TimelineModel } from './models/device.ts';
export type { RunsModel } from './models/discovery.ts';
export type { GuideModel } from './models/guide.ts';
export type { HomeModel } from './models/home.ts';
export type { LedgerModel, Ledgers } from './models/ledger.ts';
export type { AccuracyModel, MethodEntry, MethodModel } from './models/method.ts';
export type { FrontWords, NoteModel, PrintedFront } from './models/note.ts';
export type { CopyRow, RecordCopiesModel, RecordCopyModel } from './models/record-copies.ts';
export type { Budget, Evidence, RunModel, TraceWindow } from './models/run.ts';
export type { PrompterModel, ScriptModel, SpokenBlock } from './models/script.ts';
export type { SharePicture } from './models/share.ts';
export type { ConditionRow, HeldNote, Highlight, Link, Marks, PagePlot, ShownCaution, ShownFigure } from './models/shared.ts';
export type { VerifyModel } from './models/verify.ts';

export interface NotFoundModel {
  readonly kind: 'not-found';
}

export type PageModel =
  | HomeModel
  | NoteModel
  | ScriptModel
  | PrompterModel
  | LedgerModel
  | RunModel
  | DeviceModel
  | ComparisonModel
  | MethodModel
  | GuideModel
  | AboutModel
  | AccuracyModel
  | CompareModel
  | VerifyModel
  | RunsModel
  | SearchModel
  | RecordCopyModel
  | RecordCopiesModel
  | NotFoundModel;

/** `site`: what published notes reach. `all`: drafts and held-back notes too, for dev. */
export type Scope = 'site' | 'all';

/** Where dev shows the page for missing addresses. */
export const MISSING_IN_DEV = 'missing-page/';

/** Environment variable by which dev tells its own process the scope. */
export const SCOPE_VARIABLE = 'SOAKPROOF_SCOPE';

/** Environment variable by which a build tells its own process the digest of its manifest. */
export const MANIFEST_VARIABLE = 'SOAKPROOF_MANIFEST';

/** Changes with the shape below: a manifest of another format counts as none. */
export const MANIFEST_FORMAT = 6;

/** The list of what a site consists of, written last by stage 1. */
export interface Manifest {
  readonly format: typeof MANIFEST_FORMAT;
  readonly scope: Scope;
  /** All that stage 1 read: where this is equal, nothing below can differ. */
  readonly inputs: Inputs;
  readonly pages: readonly PageEntry[];
  /** Files beside the pages: path below the base, digest of the bytes in the store. */
  readonly files: readonly { readonly path: string; readonly blob: string }[];
  readonly problems: readonly Problem[];
  /** Blob: how each note and script would go out now, drafts included. Not part of the site. */
  readonly present: string;
  /** Blobs by id: all that the page of each comparison prints, as canonical JSON (RFC 8785); what a record copy of it holds. Not part of the site. */
  readonly gathered: Readonly<Record<string, string>>;
  /** Blobs by id: what the pictures of each script show. Not part of the site. */
  readonly stills: Readonly<Record<string, string>>;
  /** Blob of the feeds; null where no note is published. */
  readonly feed: string | null;
  /** Entries and blobs of the store that stage 1 made or took, also of what no published note reaches: the cache is pruned to them. */
  readonly entries: readonly string[];
  readonly blobs: readonly string[];
}

export interface Inputs {
  /** Digest of stage 1's code, the lock file and Node's major. */
  readonly code: string;
  readonly content: string;
  /** Every path below data/ that was looked up: what it was, and the digest of a log. */
  readonly data: readonly { readonly path: string; readonly kind: string; readonly sha256?: string }[];
}

export interface PageEntry {
  readonly kind: PageModel['kind'];
  /** Path below the base: '' for home, `runs/larch-fast/`. */
  readonly path: string;
  /** Digest of its model, under which the store has it. */
  readonly blob: string;
  /** The newest of the authors' dates behind it, where it hangs on any. */
  readonly date?: string;
}
