/** What the pages by which readers find things print. */
import type { Highlight, Link, Marks } from './shared.ts';

/** Something that the index can be filtered by: as it stands in the address, and as readers see it. */
export interface Choice {
  readonly id: string;
  readonly title: string;
}

/** The index of runs, devices and comparisons. */
export interface RunsModel {
  readonly kind: 'runs';
  readonly invented: boolean;
  /** The main figures that any run of the site has, in the catalogue's words. */
  readonly columns: readonly RunsColumn[];
  /** Newest first. */
  readonly rows: readonly RunsRow[];
  readonly devices: readonly IndexedDevice[];
  /** Comparisons that have a page. */
  readonly comparisons: readonly Link[];
  readonly choices: {
    readonly devices: readonly Choice[];
    readonly specimens: readonly Choice[];
    readonly makers: readonly Choice[];
    /** Settings of the clock, lowest first. */
    readonly clocks: readonly Choice[];
    readonly outcomes: readonly Choice[];
  };
  /** For each row the index of its clock among the choices; null where the run states no clock setting. */
  readonly clocks: readonly (number | null)[];
}

export interface RunsColumn {
  readonly name: string;
  readonly label: string;
  /** For each row its rank in this figure, lowest 0, equal ones equal; null where the figure is absent. */
  readonly ranks: readonly (number | null)[];
}

export interface RunsRow {
  readonly id: string;
  readonly title: string;
  /** Id of the device. */
  readonly device: string;
  readonly specimen: string;
  readonly date: string;
  /** "clock 2.6 GHz, voltage offset 40 mV" */
  readonly setting: string;
  /** One for each column. */
  readonly figures: readonly RunsCell[];
  /** Titles of its outcomes: "throttled", "steady". */
  readonly outcomes: readonly string[];
  /** The notes that use it; the scripts where there is no note. */
  readonly notes: readonly Link[];
  readonly status: Marks['status'];
}

export interface RunsCell {
  /** As printed; '' where the figure is absent. */
  readonly shown: string;
  /** Why it is absent, in two or three words; where it was measured, if the runs differ in that; '' else. */
  readonly detail: string;
}

export interface IndexedDevice {
  readonly id: string;
  readonly title: string;
  readonly maker: string;
  /** Its id among the choices. */
  readonly makerId: string;
  readonly runs: number;
}

/** The page of the search: what can be searched, and where the lists are for those who browse. */
export interface SearchModel {
  readonly kind: 'search';
  readonly invented: boolean;
  readonly lists: readonly Link[];
  /** Kinds of what can be found, with their number, in the order of the results. */
  readonly kinds: readonly (Choice & { readonly count: number })[];
}

/** The feed of notes. */
export interface NotesFeed {
  readonly entries: readonly NoteEntry[];
  /** The day of the entry that was changed last. */
  readonly updated: string;
}

export interface NoteEntry {
  readonly title: string;
  readonly path: string;
  readonly date: string;
  /** Its own day, or that of its newest correction. */
  readonly updated: string;
  readonly summary: string;
  readonly highlights: readonly Highlight[];
  readonly invented: boolean;
  /** What to beware of, in one line; '' where nothing calls for one. */
  readonly beware: string;
  /** The article in its order: HTML as the page has it, and its plots; none of older notes, so that a feed stays small. */
  readonly article: readonly (string | FeedPlot)[];
}

/** A plot as a picture; `picture` is its path below the base. */
export interface FeedPlot {
  readonly title: string;
  readonly alt: string;
  readonly picture: string;
}
