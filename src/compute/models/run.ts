/** The page of a run. */
import type { Licence } from '../../register/register.ts';
import type { DataFile } from './data-file.ts';
import type { ConditionRow, Link, Marks, PagePlot, ShownCaution, ShownFigure } from './shared.ts';

/** The uncertainty budget of a figure, printed. */
export interface Budget {
  readonly label: string;
  readonly detail: string;
  /** Combined standard uncertainty, and degrees of freedom where they are not infinitely many. */
  readonly combined: string;
  readonly rows: readonly {
    readonly title: string;
    readonly distribution: string;
    /** Standard uncertainty of the source, in its own unit. */
    readonly standard: string;
    /** Unit of the figure over that of the source. */
    readonly sensitivity: string;
    readonly contribution: string;
    readonly share: string;
  }[];
}

/** A figure's evidence: the stretch of the trace that it was made from. */
export interface Evidence {
  readonly figure: ShownFigure;
  /** Number of its stretch among those of the page. */
  readonly window: number;
}

/** A stretch of the trace, px along each of its drawings. */
export interface TraceWindow {
  readonly wide: readonly [x: number, width: number];
  readonly narrow: readonly [x: number, width: number];
}

export interface RunModel {
  readonly kind: 'run';
  /** What it came to, in one sentence; '' where its figures tell nothing of it. */
  readonly outcome: string;
  /** What to beware of, in one line; '' where nothing calls for one. */
  readonly beware: string;
  /** What the figures were made from, to be shown in the trace. */
  readonly evidence: readonly Evidence[];
  readonly windows: readonly TraceWindow[];
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
  /** What makes each uncertain figure of the page uncertain. */
  readonly budgets: readonly Budget[];
  readonly phases: readonly { readonly name: string; readonly from: string; readonly to: string; readonly inferred: boolean }[];
  readonly plots: readonly PagePlot[];
  /** Files of data, offered or not, and under which licence. */
  readonly data: { readonly files: readonly DataFile[]; readonly licence: Licence | null };
  /** What was read off displays, in the author's order. */
  readonly readings: readonly {
    readonly what: string;
    readonly value: string;
    readonly times: number;
    readonly phase: string;
    readonly at: string;
    readonly instrument: string;
  }[];
  /** In the author's order; none where the run has no log. */
  readonly logs: readonly {
    /** '' where it is the only one. */
    readonly name: string;
    readonly file: string;
    /** How it was brought to the clock of the first; '' of the first. */
    readonly placed: string;
    /** How many of its rows stand before the run's clock begins; '' for none. */
    readonly left: string;
    readonly rows: number;
    readonly span: string;
    readonly step: string;
    readonly time: string;
    readonly encoding: string;
  }[];
  readonly channels: readonly {
    readonly name: string;
    /** Name of its log; '' where there is one. */
    readonly log: string;
    readonly quantity: string;
    readonly column: string;
    readonly unit: string;
    readonly at: string;
    readonly instrument: string;
    readonly missing: number;
  }[];
  readonly setAside: readonly { readonly log: string; readonly line: number; readonly reason: string }[];
  readonly repairs: readonly string[];
  /** What the author knows of lines of the log, and why it is so. */
  readonly known: readonly string[];
  readonly inferences: readonly string[];
  /** The runs of which it is a retest, the nearest first, and its own retests. */
  readonly follows: readonly Link[];
  readonly followedBy: readonly Link[];
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
