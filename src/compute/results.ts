/** What pages see: everything they print, computed. The reader is in `read-results.ts`. */

import type { CheckTable } from '../figures/checks/results.ts';
import type { Drawn } from '../plots/drawn.ts';
import type { Problem } from '../problem.ts';
import type { Licence } from '../register/register.ts';
import type { Citation } from './cite/citation.ts';
import type { DataFile } from './data/data-file.ts';
import type { NotesFeed, RunsModel, SearchModel } from './finding/models.ts';
import type { CopyRow, RecordCopiesModel, RecordCopyModel } from './record-copies/models.ts';

export type { CopyRow, RecordCopiesModel, RecordCopyModel, RunsModel, SearchModel };

/** How a page shows that its numbers are invented, a draft, held back. */
export interface Marks {
  readonly invented: boolean;
  readonly status: 'draft' | 'held back' | 'published';
}

export interface Link {
  readonly title: string;
  /** Path below the base, without a leading slash: `runs/larch-fast/`. */
  readonly path: string;
}

/** A figure as pages print it. `shown` comes from the one printer in quantities. */
export interface ShownFigure {
  /** Address without alias. */
  readonly address: string;
  /** The same as it stands in a link to the page. */
  readonly anchor: string;
  readonly name: string;
  /** In words, from the catalogue: "peak temperature". */
  readonly label: string;
  /** "71.3 °C", or '' when absent. */
  readonly shown: string;
  /** In a table: what is set invisibly behind it, so that decimal signs stand in line. */
  readonly pad?: string;
  /** "± 1.2 °C (95 %)", or what is known of it: "repeatability only", '' when exact. */
  readonly uncertainty: string;
  /** Reason, when absent. */
  readonly absent?: string;
  /** Channel, phase, place, averaging … as short words. */
  readonly detail: string;
  readonly inferred: readonly string[];
  /** "columns a, b; lines 2–3601". */
  readonly from: string;
}

/** One numbered note at the foot: what holds a number. */
export interface HeldNote {
  readonly number: number;
  /** Of the number in the page; the note has the same behind `held:`. */
  readonly id: string;
  readonly shown: string;
  readonly expression: string;
  readonly uncertainty: string;
  /** How a script says it, where that is not how it prints. */
  readonly said?: string;
  /** On what a stated number or claim rests, in words; it then stands in place of the uncertainty. */
  readonly rests?: string;
  readonly figures: readonly {
    readonly label: string;
    readonly method: Link | null;
    readonly run: Link;
    readonly shown: string;
    readonly uncertainty: string;
    readonly file: string;
    readonly from: string;
    readonly inferred: readonly string[];
  }[];
}

/** A plot on a page: a Drawn less what is published as files beside it. */
export interface PagePlot extends Pick<Drawn, 'id' | 'title' | 'alt' | 'method' | 'table'> {
  /** Digests of the SVGs for wide and narrow columns, which the page puts in whole. */
  readonly inline: { readonly wide: string; readonly narrow: string };
  readonly files: { readonly svg: string; readonly png: string; readonly csv: string };
}

/** A published number that is no longer so. */
export interface ShownCorrection {
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
export interface CorrectedTogether extends Pick<ShownCorrection, 'since' | 'reason' | 'closed'> {
  readonly numbers: readonly (Pick<ShownCorrection, 'label' | 'was' | 'is' | 'cue' | 'sentence'> & {
    /** Of the element that tells it. */
    readonly id: string;
  })[];
}

/** The corrections of all published notes and scripts, newest first. */
export interface FeedModel {
  /** `path` leads to the correction itself. */
  readonly entries: readonly (ShownCorrection & Link)[];
  /** The day of the newest of them, or of the newest note. */
  readonly updated: string;
}

/** The feeds of a site in which something is published. */
export interface Feeds {
  readonly corrections: FeedModel;
  readonly notes: NotesFeed;
}

/** What was done or found, each time, and what that risks. */
export interface ShownCaution {
  readonly done: readonly string[];
  readonly risk: string;
}

export interface Highlight {
  readonly label: string;
  readonly shown: string;
  readonly uncertainty: string;
  readonly run: string;
}

export interface ConditionRow {
  readonly label: string;
  readonly text: string;
}

export interface HomeModel {
  readonly kind: 'home';
  readonly notes: readonly {
    readonly link: Link;
    readonly date: string;
    readonly summary: string;
    readonly device: string;
    readonly marks: Marks;
    readonly highlights: readonly Highlight[];
    readonly scripts: readonly { readonly link: Link; readonly length: string }[];
  }[];
  readonly devices: readonly Link[];
  /** Scripts that speak for no published note; the others stand under theirs. */
  readonly scripts: readonly { readonly link: Link; readonly date: string; readonly length: string; readonly marks: Marks }[];
}

export interface NoteModel {
  readonly kind: 'note';
  readonly title: string;
  readonly date: string;
  readonly summary: string;
  /** The same words with their held numbers, for the page itself. */
  readonly front: ShownFront;
  readonly marks: Marks;
  readonly devices: readonly Link[];
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
  readonly heldNotes: readonly HeldNote[];
  readonly cautions: readonly ShownCaution[];
  readonly disclosure: string;
  /** Published scripts that speak for it. */
  readonly scripts: readonly Link[];
  /** Newest first. */
  readonly corrections: readonly CorrectedTogether[];
  /** They as text ready to paste; '' where there are none. */
  readonly correctionsFile: string;
  readonly ledger: Ledgers;
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
export interface ShownFront {
  readonly title: FrontWords;
  readonly summary: FrontWords;
  readonly disclosure: FrontWords;
}

/** A block of a script in HTML, in pieces. */
export interface SpokenBlock {
  readonly kind: 'heading' | 'said' | 'cue' | 'shown';
  /** Of a heading. */
  readonly depth: number;
  readonly id: string;
  /** Of a cue, when it is due; of a heading, when its section begins: "1:05". */
  readonly time: string;
  /** "about" where the time is an estimate, '' where the author or the video gives it. */
  readonly about: string;
  readonly pieces: readonly (string | SpokenNumber | PagePlot)[];
}

export interface ScriptModel {
  readonly kind: 'script';
  readonly title: string;
  readonly date: string;
  readonly summary: string;
  /** The same words with their held numbers, for the page itself. */
  readonly front: ShownFront;
  readonly marks: Marks;
  readonly devices: readonly Link[];
  /** The note that it speaks for, where that is published. */
  readonly note: Link | null;
  readonly length: {
    /** "2:31" */
    readonly time: string;
    readonly words: number;
    /** On what the times rest, in words. */
    readonly basis: string;
    readonly sections: readonly {
      readonly title: string;
      readonly id: string;
      readonly words: number;
      readonly time: string;
      readonly from: string;
    }[];
  };
  readonly blocks: readonly SpokenBlock[];
  readonly heldNotes: readonly HeldNote[];
  readonly cautions: readonly ShownCaution[];
  readonly disclosure: string;
  /** Newest first. */
  readonly corrections: readonly CorrectedTogether[];
  /** They as text ready to paste; '' where there are none. */
  readonly correctionsFile: string;
  readonly prompter: string;
  readonly ledger: Ledgers;
  readonly files: { readonly txt: string; readonly vtt: string };
}

/** A script to be read while speaking. */
export interface PrompterModel {
  readonly kind: 'prompter';
  readonly title: string;
  readonly marks: Marks;
  readonly script: Link;
  readonly pace: number;
  readonly words: number;
  readonly blocks: readonly {
    readonly kind: SpokenBlock['kind'];
    readonly time: string;
    /** Plain words in spoken form. */
    readonly text: string;
  }[];
}

/** The ledger of a note or script: as a page and as JSON. */
export interface Ledgers {
  readonly page: string;
  readonly json: string;
}

/** Every number of a note or script, with all that holds it. */
export interface LedgerModel {
  readonly kind: 'ledger';
  readonly title: string;
  readonly marks: Marks;
  /** The note or script. */
  readonly of: Link & { readonly kind: 'note' | 'script' };
  readonly json: string;
  readonly rows: readonly (HeldNote & {
    /** "value", "stated number", "claim", "number of a table", "highlight". */
    readonly kind: string;
    /** What the author wrote, where that is not what is printed. */
    readonly text: string;
    /** How a script says it, where that is not what is printed; '' else. */
    readonly said: string;
    /** Before rounding, with its standard uncertainty. */
    readonly value: string;
    readonly verdict: string;
    /** "content/notes/x.md:12:3" */
    readonly place: string;
    /** Whether it stands in the text; highlights do not. */
    readonly inText: boolean;
  })[];
}

export interface RunModel {
  readonly kind: 'run';
  readonly id: string;
  readonly title: string;
  readonly date: string;
  readonly marks: Marks;
  readonly device: Link;
  readonly specimen: string;
  readonly setting: readonly ConditionRow[];
  readonly conditions: readonly ConditionRow[];
  readonly instruments: readonly { readonly title: string; readonly accuracy: string }[];
  readonly cautions: readonly ShownCaution[];
  /** In the author's words: HTML of the run's own text. */
  readonly body: string;
  readonly groups: readonly { readonly subject: string; readonly figures: readonly ShownFigure[] }[];
  readonly phases: readonly { readonly name: string; readonly from: string; readonly to: string; readonly inferred: boolean }[];
  readonly plots: readonly PagePlot[];
  /** Files of data, offered or not, and under which licence. */
  readonly data: { readonly files: readonly DataFile[]; readonly licence: Licence | null };
  readonly log: {
    readonly rows: number;
    readonly span: string;
    readonly step: string;
    readonly time: string;
    readonly encoding: string;
  };
  readonly channels: readonly {
    readonly name: string;
    readonly quantity: string;
    readonly column: string;
    readonly unit: string;
    readonly at: string;
    readonly instrument: string;
    readonly missing: number;
  }[];
  readonly setAside: readonly { readonly line: number; readonly reason: string }[];
  readonly repairs: readonly string[];
  /** What the author knows of lines of the log, and why it is so. */
  readonly known: readonly string[];
  readonly inferences: readonly string[];
  readonly notes: readonly Link[];
  /** The page of free comparison with it chosen. */
  readonly compare: string;
  /** Comparisons that it stands in. */
  readonly comparisons: readonly Link[];
  readonly figuresFile: string;
  /** In one line of text. */
  readonly citation: string;
  /** Structured data as JSON-LD. */
  readonly linked: string;
}

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

/** Figures side by side: a row a figure or test, a column a run (or a figure of all runs). */
export interface ComparedTable {
  readonly caption: string;
  /** What all of it is of, in the catalogue; '' where rows say it. */
  readonly name: string;
  readonly columns: readonly string[];
  readonly rows: readonly {
    /** In the catalogue; '' where the row is a test. */
    readonly name: string;
    readonly label: string;
    readonly detail: string;
    readonly cells: readonly ComparedCell[];
  }[];
  /** Why figures are absent, each reason once. */
  readonly absent: readonly string[];
}

export interface ComparedCell {
  /** Of a figure of the comparison: "speedup.fast"; '' else. */
  readonly anchor: string;
  /** Null where there is nothing of the kind. */
  readonly figure: ComparedFigure | null;
  /** What lies between it and the reference's; null for the reference itself, and where there is none. */
  readonly against: ComparedFigure | null;
}

/** A figure as a cell prints it: row and column say the rest. */
export interface ComparedFigure {
  /** "66.5 °C (64.5 to 68.0)", "+6.0 ± 0.9 K": with its 95 % interval; '' when absent. */
  readonly shown: string;
  /** "told apart", "not told apart", or what else was found; '' where nothing is compared. */
  readonly verdict: string;
  /** What else is said of it. */
  readonly detail: string;
  /** Reason, when absent. */
  readonly absent?: string;
  readonly inferred: readonly string[];
}

export interface ComparisonModel {
  readonly kind: 'comparison';
  /** The page of free comparison with its runs; a record copy has none. */
  readonly compare?: string;
  readonly id: string;
  readonly title: string;
  readonly marks: Marks;
  /** Alias of the run that the others are compared with. */
  readonly reference: string;
  readonly runs: readonly {
    readonly alias: string;
    readonly title: string;
    /** '' where the run has no page any more. */
    readonly path: string;
    readonly date: string;
    readonly setting: string;
  }[];
  readonly devices: readonly Link[];
  /** In the author's words: HTML of the comparison's own text. */
  readonly body: string;
  readonly cautions: readonly ShownCaution[];
  readonly fairness: {
    /** Whether one thing alone differs, in a sentence. */
    readonly lead: string;
    /** What differs besides the setting, each with what that may do. */
    readonly warnings: readonly string[];
    /** When two ambients count as different. */
    readonly rule: string;
  };
  /** Setting and conditions that all runs share. */
  readonly shared: readonly ConditionRow[];
  /** Those in which any two differ: a cell a run. `differs`: from the reference. */
  readonly apart: readonly {
    readonly label: string;
    readonly cells: readonly { readonly text: string; readonly differs: boolean }[];
  }[];
  /** Figures that only several runs have, by run. */
  readonly compared: ComparedTable;
  /** Those that are of all runs together. */
  readonly overall: readonly ShownFigure[];
  /** Scores, and what they say against the reference, by test. */
  readonly byTest: readonly ComparedTable[];
  /** The runs' own figures. */
  readonly own: ComparedTable;
  /** What of all these was not declared, each statement once. */
  readonly inferred: readonly string[];
  readonly plots: readonly PagePlot[];
  /** Why other plots are not drawn, in sentences. */
  readonly undrawn: readonly string[];
  readonly files: readonly { readonly alias: string; readonly file: string; readonly sha256: string; readonly rows?: number }[];
  readonly figuresFile: string;
  readonly notes: readonly Link[];
  /** Record copies of it, newest first; a copy itself names none. */
  readonly copies: readonly CopyRow[];
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

export interface MethodEntry {
  readonly name: string;
  readonly label: string;
  readonly subject: string;
  readonly definition: string;
  /** MathML. */
  readonly formula: string;
  readonly unit: string;
  readonly assumptions: readonly string[];
  readonly absentWhen: readonly string[];
  readonly source: string;
  /** What outside the project it was checked against, in words. */
  readonly check: string;
  /** Published values that it passes, with the fewest digits reached. */
  readonly checks: readonly { readonly id: string; readonly title: string; readonly digits: string }[];
  /** How often its interval held the truth in simulated runs; null where that was not simulated. */
  readonly coverage: { readonly words: string; readonly truth: string; readonly why: string } | null;
}

/** Published values beside ours, and how often intervals hold the truth. */
export interface AccuracyModel {
  readonly kind: 'accuracy';
  readonly tables: readonly CheckTable[];
  /** Simulated runs of each kind, and the seed of the first. */
  readonly runs: number;
  readonly seed: number;
  readonly coverage: readonly {
    readonly name: string;
    readonly label: string;
    readonly kind: string;
    readonly truth: string;
    readonly limits: string;
    readonly limitsOf: number;
    readonly expanded: string;
    readonly expandedOf: number;
    /** Why it lies outside the band; '' inside. */
    readonly why: string;
  }[];
}

export interface MethodModel {
  readonly kind: 'method';
  readonly subjects: readonly { readonly subject: string; readonly entries: readonly MethodEntry[] }[];
  /** Prose on uncertainty, rounding, steady state, thinning: title and HTML. */
  readonly chapters: readonly { readonly id: string; readonly title: string; readonly html: string }[];
}

/** Every file of data that a site publishes, by the page that it belongs to, with its digest. */
export interface VerifyModel {
  readonly kind: 'verify';
  /** Path of the digests as JSON. */
  readonly digests: string;
  readonly invented: boolean;
  readonly groups: readonly {
    readonly of: Link;
    readonly files: readonly {
      readonly what: string;
      readonly name: string;
      /** Null where it is not offered here. */
      readonly path: string | null;
      readonly elsewhere?: string;
      readonly sha256: string;
    }[];
  }[];
}

/** Where readers choose runs to compare: all that the page has before scripting. */
export interface CompareModel {
  readonly kind: 'compare';
  readonly invented: boolean;
  readonly devices: readonly {
    readonly title: string;
    readonly maker: string;
    readonly runs: readonly (Link & {
      readonly id: string;
      /** Ids that it had before. */
      readonly was: readonly string[];
      /** Specimen, date and setting. */
      readonly detail: string;
      readonly status: Marks['status'];
    })[];
  }[];
  readonly comparisons: readonly Link[];
}

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
export const MANIFEST_FORMAT = 4;

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
  /** Blob of the feeds; null where no note is published. */
  readonly feed: string | null;
  /** Keys of the results that it was made from, kept when the cache is pruned. */
  readonly entries: readonly string[];
  /** Drawings and downloads of all plots, also of those that no published note reaches: kept with their results. */
  readonly downloads: readonly string[];
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
