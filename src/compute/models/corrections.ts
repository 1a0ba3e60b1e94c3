/** Published numbers that are no longer so, on pages and in feeds. */
import type { NotesFeed } from './discovery.ts';
import type { Link } from './shared.ts';

/** A published number that is no longer so. */
export interface PrintedCorrection {
  /** The day that the author gave. */
  readonly since: string;
  /** The expression that holds it. */
  readonly number: string;
  /** The same in words; '' for a claim. */
  readonly label: string;
  readonly was: string;
  readonly is: string;
  readonly reason: string;
  /** In scripts: when it is said. */
  readonly cue?: string | undefined;
  /** As it stood when it was published; '' for a highlight. */
  readonly sentence: string;
  /** The day of a later publication that closed it. */
  readonly closed?: string | undefined;
}

/** Corrections of one day that one reason stands for. */
export interface CorrectedTogether extends Pick<PrintedCorrection, 'since' | 'reason' | 'closed'> {
  readonly numbers: readonly (Pick<PrintedCorrection, 'label' | 'was' | 'is' | 'cue' | 'sentence'> & {
    /** Of the element that tells it. */
    readonly id: string;
  })[];
}

/** The corrections of all published notes and scripts, newest first. */
export interface FeedModel {
  /** `path` leads to the correction itself. */
  readonly entries: readonly (PrintedCorrection & Link)[];
  /** The day of the newest of them, or of the newest note. */
  readonly updated: string;
}

/** The feeds of a site in which something is published. */
export interface Feeds {
  readonly corrections: FeedModel;
  readonly notes: NotesFeed;
}
