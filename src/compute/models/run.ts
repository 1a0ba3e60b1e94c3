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
  /** What makes each uncertain figure of the page uncertain. */
  readonly budgets: readonly Budget[];
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
