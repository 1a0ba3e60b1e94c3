/** How figures are defined, and how well they are computed. */
import type { Definition } from '../../figures/catalogue.ts';
import type { CheckTable } from '../../figures/checks/results.ts';

/** A figure of the catalogue, its formula as MathML. */
export interface MethodEntry extends Definition {
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
