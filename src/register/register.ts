/** The Register: the author's files, validated, inheritance resolved, cross-references checked. Nothing here reads disk. */
import type { Offset } from '../figures/alignment/align.ts';
import type { DeclaredPhase, RunContext } from '../figures/context.ts';
import type { PresentFigure } from '../figures/figure.ts';
import type { PassCriterion } from '../figures/stability/ladder.ts';
import type { ImagePoint } from '../figures/surface/in-image.ts';
import type { ChannelDeclaration, LogDeclaration } from '../intake/log.ts';
import type { TableMapping } from '../intake/table-mapping.ts';
import type { Place } from '../problem.ts';
import type { Quantity } from '../quantities/quantity.ts';

/** What there is below data/, as compute tells it. `outside` = the path leaves data/, also through a symbolic link. */
export interface DataFiles {
  kind(path: string): 'file' | 'folder' | 'missing' | 'outside';
}

/** One file of content/, as compute hands it over. */
export interface ContentFile {
  /** e.g. `content/runs/larch-fast.md`. */
  readonly path: string;
  readonly text: string;
}

interface Item {
  readonly id: string;
  readonly file: string;
  readonly title: string;
  /** Markdown below the front matter starts at this 1-based line; '' when there is none. */
  readonly body: string;
  /** 1-based line of the file on which `body` starts. */
  readonly bodyLine: number;
  /** Where a key of the front matter stands, by dotted path (`channels.soc.column`); the file's start for ''. */
  readonly placeOf: (path: string) => Place;
}

/** What has a page that is named by its id. */
interface Renamed {
  /** Addresses at which it stood under other ids. */
  readonly was?: readonly EarlierAddress[];
}

export interface Device extends Item, Renamed {
  readonly maker: string;
  /** True: everything about it is invented; pages say so. */
  readonly invented: boolean;
  readonly ratedClock?: Quantity;
  /** Limit by channel name; `*` is the limit of whichever channel is a run's primary temperature. */
  readonly throttleAt: Readonly<Record<string, Quantity>>;
  readonly supply?: Quantity;
  readonly power?: 'mains' | 'adapter' | 'battery';
}

export interface Instrument extends Item {
  readonly facts: import('../figures/context.ts').InstrumentFacts;
}

/** A condition or setting as the author put it: words, or a quantity. */
export type Condition = { readonly name: string; readonly text: string; readonly quantity?: Quantity };

export const SHARES = ['as it came', 'cleaned only', 'digest only'] as const;
/** How much of a log goes out: itself, only the readings that are used, or nothing but its digest. */
export type Share = (typeof SHARES)[number];

/** How a log goes out, as far as its author says it. */
export interface Sharing {
  readonly share?: Share;
  /** A second file below data/ that goes out in its place. */
  readonly redacted?: { readonly file: string; readonly place: Place };
  /** Where it can be had instead: an https address. */
  readonly elsewhere?: string;
}

/** How data may be used. */
export interface Licence {
  /** Of the SPDX licence list. */
  readonly id?: string;
  readonly title: string;
  readonly url?: string;
}

/** One log of a run. */
export interface RunLog {
  /** The author's name of it; '' where it is the only one. */
  readonly name: string;
  /** Its channels are those that may be its: one that names no log is sought in all of them. */
  readonly declaration: LogDeclaration;
  /** How its clock stands to that of the first; undefined where nobody says, and of the first. */
  readonly offset?: Offset;
  /** How it goes out. */
  readonly sharing: Sharing;
}

/** A spot on a photograph. */
export interface MarkedSpot {
  /** As the table of surface readings has it. */
  readonly spot: string;
  readonly at: ImagePoint;
}

/** In the author's order, by the path of the photograph below data/. */
export type Photographs = ReadonlyMap<string, readonly MarkedSpot[]>;

export interface Run extends Item, Renamed {
  readonly setup?: string;
  /** Id of the run of which it is a retest. */
  readonly follows?: string;
  readonly device: string;
  readonly specimen: string;
  /** ISO date. */
  readonly date: string;
  readonly conditions: readonly Condition[];
  readonly setting: readonly Condition[];
  readonly instruments: readonly string[];
  /** In the author's order; the first has the run's clock. Empty where the run has none. */
  readonly logs: readonly RunLog[];
  /** Of all logs, in declared order. */
  readonly channels: readonly ChannelDeclaration[];
  readonly phases: 'auto' | readonly DeclaredPhase[];
  readonly steady?: string;
  /** Paths below data/ of scores and surface readings, kept for their own figures. */
  readonly scores?: string;
  readonly surface?: string;
  /** How they say what they say, where not in our words. */
  readonly mappings?: { readonly scores?: TableMapping; readonly surface?: TableMapping };
  /** Path below data/ of their thermal image. */
  readonly surfaceImage?: string;
  /** Photographs on which their spots are marked. */
  readonly photographs?: Photographs;
  /** Id of the instrument that took the surface readings. */
  readonly surfaceInstrument?: string;
  /** How its data may be used; absent where nobody says so. */
  readonly licence?: Licence;
  /** What figures need to know. */
  readonly context: RunContext;
  /**
   * Quantities that are addresses besides figures: `setting.clock`, `ambient`, `supply`, `device.rated_clock`, `device.supply`,
   * `device.throttle_at` (of the primary temperature), `device.throttle_at.ssd` …
   */
  readonly facts: ReadonlyMap<string, Quantity>;
  /** Where each of the facts is written: in the run, its setup or its device. */
  readonly factPlaces: ReadonlyMap<string, Place>;
}

export type NoteStatus = 'draft' | 'held back' | 'published';

export interface Note extends Item {
  /** The whole file less a byte order mark, for words (positions count from its start). */
  readonly text: string;
  readonly kind: 'note' | 'script';
  readonly date: string;
  readonly status: NoteStatus;
  /** Alias to run id, in the author's order. */
  readonly runs: ReadonlyMap<string, string>;
  readonly comparisons: ReadonlyMap<string, string>;
  /** Alias to id of attempts. */
  readonly attempts?: ReadonlyMap<string, string>;
  /** Alias to id of what is quoted. */
  readonly quoted?: ReadonlyMap<string, string>;
  readonly highlights: readonly { readonly expression: string; readonly place: Place }[];
  /** True where a retest takes the place of the run that it follows. */
  readonly followsRetests?: boolean;
  /** The chart at its head: what is asked for, by the names of a plot's attributes in a text. */
  readonly lead?: {
    readonly attributes: ReadonlyMap<string, { readonly value: string; readonly place: Place }>;
    readonly place: Place;
  };
  readonly summary?: string;
  readonly disclosure?: string;
  /** Who wrote it, as they want to be cited. */
  readonly authors?: readonly string[];
  /** How its own words may be used. */
  readonly licence?: Licence;
  /** Title, summary and disclosure as they stand in the file, which words read for held numbers. */
  readonly front?: readonly FrontText[];
  /** `refuse`: a number with a unit that nothing holds is an error of this note; a warning else. */
  readonly unheld?: UnheldRule;
  /** Of a script: words per minute. */
  readonly pace?: number;
  /** Of a script: the subtitle file of the finished video, below data/. */
  readonly subtitles?: string;
  /** Of a script: the slug of the note that it speaks for. */
  readonly note?: string;
  /** Reasons for numbers that print differently than they were published. */
  readonly corrections?: readonly StatedCorrection[];
  /** Addresses at which something of it stood before, and which lead to it now. */
  readonly was?: readonly EarlierAddress[];
}

export type FrontKey = 'title' | 'summary' | 'disclosure';

export interface FrontText {
  readonly key: FrontKey;
  readonly text: string;
  /** Of its first letter. */
  readonly place: Place;
}

/** Why a published number prints differently: `now` is what it prints, so that a reason never serves for a later change. */
export interface StatedCorrection {
  /** The expression that holds it. */
  readonly number: string;
  readonly now: string;
  /** ISO date. */
  readonly since: string;
  readonly reason: string;
  readonly place: Place;
}

export interface EarlierAddress {
  readonly address: string;
  readonly place: Place;
}

export type UnheldRule = 'warn' | 'refuse';

export interface Comparison extends Item, Renamed {
  /** Ids of the runs of each setting, by its alias, in the author's order. */
  readonly settings: ReadonlyMap<string, readonly string[]>;
  /** Every run by an alias of its own: the first of a setting has the setting's, the next ones that with their number (`fast 2`). */
  readonly runs: ReadonlyMap<string, string>;
  /** True where a retest takes the place of the run that it follows. */
  readonly followsRetests?: boolean;
  /** Ids of other repeats of the specimen, which say how runs lie apart and are not compared. */
  readonly repeats: readonly string[];
  /** Alias of a setting. */
  readonly reference: string;
  /** Ids of what others published, to stand beside it. */
  readonly quoted?: readonly string[];
}

export interface Attempts extends Item {
  readonly device: string;
  readonly specimen: string;
  /** Path below data/. */
  readonly table: string;
  /** How the table says what it says, where not in our words. */
  readonly mapping?: TableMapping;
  /** What "passed" means of all rows, as far as the file says it. */
  readonly passed?: Partial<PassCriterion>;
}

/** What somebody else published. */
export interface Quoted extends Item {
  readonly source: {
    readonly author: string;
    /** Where it stands: https. */
    readonly address: string;
    /** ISO date on which it was published, where it says so. */
    readonly date?: string;
    /** ISO date on which it was read. */
    readonly accessed: string;
  };
  /** In the source's words. */
  readonly device?: string;
  /** Setting and conditions, in the source's words. */
  readonly conditions: readonly Condition[];
  /** By address without alias. */
  readonly figures: ReadonlyMap<string, PresentFigure>;
}

export interface Register {
  readonly devices: ReadonlyMap<string, Device>;
  readonly instruments: ReadonlyMap<string, Instrument>;
  readonly runs: ReadonlyMap<string, Run>;
  readonly attempts: ReadonlyMap<string, Attempts>;
  readonly comparisons: ReadonlyMap<string, Comparison>;
  readonly quoted: ReadonlyMap<string, Quoted>;
  /** Notes and scripts, by `notes/<slug>` and `scripts/<slug>`. */
  readonly notes: ReadonlyMap<string, Note>;
}
