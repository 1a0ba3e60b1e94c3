/** What models of several kinds of page have in common. */
import type { Drawn } from '../../plots/drawing/drawn.ts';

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
export interface PagePlot extends Pick<Drawn, 'id' | 'title' | 'about' | 'along' | 'alt' | 'method' | 'table'> {
  /** Digests of the SVGs for wide and narrow columns, which the page puts in whole. */
  readonly inline: { readonly wide: string; readonly narrow: string };
  readonly files: { readonly svg: string; readonly png?: string; readonly csv: string };
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

/** How to cite a page, as the page prints it. */
export interface Citation {
  readonly plain: string;
  /** Addresses of the files, below the base. */
  readonly bib: string;
  readonly json: string;
}

/** What somebody else published, with where it stands. */
export interface ShownQuoted {
  /** Its place on the page. */
  readonly id: string;
  readonly title: string;
  readonly author: string;
  readonly address: string;
  /** ISO date; '' where the source states none. */
  readonly published: string;
  readonly accessed: string;
  readonly conditions: readonly ConditionRow[];
  readonly figures: readonly { readonly label: string; readonly shown: string; readonly uncertainty: string }[];
}
