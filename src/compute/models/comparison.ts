/** Runs side by side: the pages that authors make, and the one on which readers choose. */
import type { CopyRow } from './record-copies.ts';
import type { SharePicture } from './share.ts';
import type { ConditionRow, Link, Marks, PagePlot, ShownCaution, ShownFigure } from './shared.ts';

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
  /** What holds of each cell with a difference that says nothing of it; '' where each says so itself. */
  readonly unsaid: string;
}

/** What one setting is against the reference. */
export interface Finding {
  /** "quick (clock 2.4 GHz) against rated: ", with ", in these runs" before the colon where no spread between runs is known. */
  readonly opening: string;
  /** What differs: "7.5 ± 0.5 %" "faster", with the anchor of the figure. */
  readonly differs: readonly { readonly amount: string; readonly of: string; readonly anchor: string }[];
  /** What was asked and not told, as labels. */
  readonly open: readonly string[];
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
  /** Each setting against the reference, in a sentence. */
  readonly findings: readonly Finding[];
  /** What to beware of, in one line; '' where nothing calls for one. */
  readonly beware: string;
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
  /** What others published, beside figures of the settings. */
  readonly quoted: readonly {
    readonly label: string;
    readonly shown: string;
    readonly title: string;
    readonly author: string;
    readonly address: string;
    readonly accessed: string;
    readonly conditions: readonly ConditionRow[];
    readonly cells: readonly {
      readonly alias: string;
      readonly shown: string;
      /** Own less quoted; '' where that has no sense. */
      readonly difference: string;
      readonly verdict: string;
    }[];
  }[];
  /** What of all these was not declared, each statement once. */
  readonly inferred: readonly string[];
  readonly plots: readonly PagePlot[];
  /** Why other plots are not drawn, in sentences. */
  readonly undrawn: readonly string[];
  readonly files: readonly { readonly alias: string; readonly file: string; readonly sha256: string; readonly rows?: number }[];
  readonly figuresFile: string;
  readonly notes: readonly Link[];
  /** Left out where the site has no address. */
  readonly share?: SharePicture | null;
  /** Record copies of it, newest first; a copy itself names none. */
  readonly copies: readonly CopyRow[];
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
