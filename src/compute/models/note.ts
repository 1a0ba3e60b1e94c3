/** A note, and the words of a front matter. */
import type { Licence } from '../../register/register.ts';
import type { CorrectedTogether } from './corrections.ts';
import type { DataFile } from './data-file.ts';
import type { Ledgers } from './ledger.ts';
import type { SharePicture } from './share.ts';
import type { Citation, ConditionRow, HeldNote, Highlight, Link, Marks, PagePlot, ShownCaution, ShownQuoted } from './shared.ts';

/** A heading of the text: a page's own address, and its words. */
export interface Heading {
  readonly id: string;
  readonly text: string;
}

/** What notes and scripts have in common. */
export interface WordsModel {
  readonly title: string;
  readonly date: string;
  readonly summary: string;
  /** The same words with their held numbers, for the page itself. */
  readonly front: PrintedFront;
  readonly marks: Marks;
  readonly devices: readonly Link[];
  readonly heldNotes: readonly HeldNote[];
  /** What it quotes from others. */
  readonly quoted: readonly ShownQuoted[];
  readonly cautions: readonly ShownCaution[];
  readonly disclosure: string;
  /** Newest first. */
  readonly corrections: readonly CorrectedTogether[];
  /** They as text ready to paste; '' where there are none. */
  readonly correctionsFile: string;
  readonly ledger: Ledgers;
}

export interface NoteModel extends WordsModel {
  readonly kind: 'note';
  /** What was tested under which conditions, in one line. */
  readonly tested: string;
  /** What to beware of, in one line; '' where nothing calls for one. */
  readonly beware: string;
  /** Its headings, where there are enough of them to look one up. */
  readonly contents: readonly Heading[];
  /** The chart at its head; null where the note draws nothing. */
  readonly lead: PagePlot | null;
  readonly share: SharePicture | null;
  /** The notes published before and after it. */
  readonly before: Link | null;
  readonly after: Link | null;
  readonly runs: readonly {
    readonly link: Link;
    readonly alias: string;
    readonly setting: string;
    readonly conditions: readonly ConditionRow[];
  }[];
  /** Conditions that all its runs share. */
  readonly shared: readonly ConditionRow[];
  /** Comparisons that it names. */
  readonly comparisons: readonly Link[];
  readonly highlights: readonly Highlight[];
  readonly pieces: readonly (string | PagePlot)[];
  /** Published scripts that speak for it. */
  readonly scripts: readonly Link[];
  /** By run or attempts: the author's files with their digests, and what is made from them. */
  readonly reproduce: readonly {
    readonly of: Link;
    readonly files: readonly DataFile[];
    readonly made: readonly DataFile[];
  }[];
  /** All of its data in one file; null where it is not published. */
  readonly archive: { readonly path: string; readonly name: string; readonly size: string; readonly sha256: string } | null;
  readonly citation: Citation;
  /** How its own words may be used; null where nobody says so. */
  readonly licence: Licence | null;
  readonly authors: readonly string[];
  /** Structured data as JSON-LD. */
  readonly linked: string;
}

/** A held number as a script says it: linked to its note, with the form that the note of the same number prints. */
export interface SpokenNumber {
  readonly number: number;
  /** As in its note. */
  readonly id: string;
  readonly said: string;
  /** Id of its open correction; '' where there is none. */
  readonly corrected: string;
}

/** Words of the front matter, with the held numbers in them. */
export type FrontWords = readonly (string | SpokenNumber)[];

/** Title, summary and disclosure of a note or script; empty where it has none. */
export interface PrintedFront {
  readonly title: FrontWords;
  readonly summary: FrontWords;
  readonly disclosure: FrontWords;
}

/** The archive of a note, in the store. */
export interface Archive {
  readonly path: string;
  readonly sha256: string;
  readonly bytes: number;
}
