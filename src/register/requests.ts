/** What a note asks the plots to draw. Words reads these from directives; plots draws them; neither knows the other. */
import type { Place } from '../problem.ts';

export const PLOT_KINDS = ['trace', 'step-response', 'power-by-phase'] as const;
export type PlotKind = (typeof PLOT_KINDS)[number];

export interface PlotRequest {
  readonly kind: PlotKind;
  /** Stable within the page, from kind, channels and runs, or the author's own `id`. */
  readonly id: string;
  /** In the order asked for; `alias` is what labels say, `run` the run's id. */
  readonly runs: readonly { readonly alias: string; readonly run: string }[];
  /** Channel names; empty = the primary temperature. */
  readonly channels: readonly string[];
  /** Temperatures as rise over ambient. */
  readonly rise: boolean;
  /** The author's title; else one is made from what is drawn. */
  readonly title?: string;
  readonly place: Place;
}
