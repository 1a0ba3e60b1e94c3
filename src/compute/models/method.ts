/** How figures are defined, and how well they are computed. */
import type { Definition } from '../../figures/catalogue.ts';
import type { CheckTable } from '../../figures/checks/results.ts';

/** A figure of the catalogue, its formula as MathML. */
export interface MethodEntry extends Definition {
  /** Published values that it passes, with the fewest digits reached. */
  readonly checks: readonly { readonly id: string; readonly title: string; readonly digits: string }[];
  /** How often its interval held the truth in simulated runs; null where that was not simulated. */
  readonly coverage: { readonly words: string; readonly truth: string; readonly why: string } | null;
  /** The same in families of logs that it may stumble on: anchors and titles of the accuracy page. */
  readonly families: readonly {
    readonly id: string;
    readonly title: string;
    readonly words: string;
    readonly why: readonly string[];
  }[];
}

/** A family of coverage: what was simulated, and what each question came to over all sets of parameters. */
export interface FamilyTableModel {
  readonly id: string;
  readonly title: string;
  readonly words: string;
  /** Of each set of parameters. */
  readonly trials: number;
  readonly intervals: readonly FamilyIntervalModel[];
  /** Verdicts, warnings, bounds, pairs and absences, each as a sentence. */
  readonly sayings: readonly string[];
}

/** Intervals of one figure over the sets of parameters of a family, in words. */
export interface FamilyIntervalModel {
  readonly name: string;
  readonly label: string;
  readonly cells: number;
  readonly present: string;
  readonly held: string;
  readonly of: number;
  /** Shares of the sets of parameters that hold least and most. */
  readonly least: string;
  readonly most: string;
  /** Half widths as multiples of those that one who knew the noise would give. A dash, as above, where there is none. */
  readonly ratio: string;
  readonly why: readonly string[];
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
  readonly families: readonly FamilyTableModel[];
}

export interface MethodModel {
  readonly kind: 'method';
  readonly subjects: readonly { readonly subject: string; readonly entries: readonly MethodEntry[] }[];
  /** Prose on uncertainty, rounding, steady state, thinning: title and HTML. */
  readonly chapters: readonly { readonly id: string; readonly title: string; readonly html: string }[];
}
