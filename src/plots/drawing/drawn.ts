/** A plot as drawn: what pages inline, what can be downloaded, and the same data for eyes that cannot see it. */

import type { RunContext } from '../../figures/context.ts';
import type { FigureMap, RunFigures } from '../../figures/figure.ts';
import type { Ladder } from '../../figures/stability/ladder.ts';
import type { Surface } from '../../figures/surface/surface-table.ts';
import type { Log } from '../../intake/log.ts';
import type { Problem } from '../../problem.ts';
import type { Quantity } from '../../quantities/quantity.ts';

/** One run of a plot, with all that may be drawn of it. */
export interface PlotSubject {
  /** '' on the run's own page, whose title says which run it is: lines are then labelled with their channels. */
  readonly alias: string;
  readonly title: string;
  readonly log: Log;
  readonly derived: RunFigures;
  readonly context: RunContext;
  /** Its surface readings, for those that lie in a thermal image. */
  readonly surface?: Surface;
}

/** Settings tried on one specimen. */
export interface AttemptsSubject {
  readonly ladder: Ladder;
  readonly ratedClock?: Quantity;
}

/** Where the common time axis of a drawing lies, for what is laid over it. */
export interface Along {
  readonly unit: string;
  /** s of one unit of the axis; s of the first run's log at which the axis is 0. */
  readonly seconds: number;
  readonly zero: number;
  readonly from: number;
  readonly to: number;
  /** Left edge and width of the data area, px. */
  readonly wide: readonly [left: number, width: number];
  readonly narrow: readonly [left: number, width: number];
}

export interface Drawn {
  readonly id: string;
  /** What it shows, in words. */
  readonly title: string;
  /** What is drawn, where the title says what was found; below the drawing. */
  readonly about?: string;
  /** Text alternative: what a reader sees in it, with the numbers that matter. */
  readonly alt: string;
  /** Of lines over time. */
  readonly along?: Along;
  /** How it was drawn: thinning, axes, what was left out. One or two sentences. */
  readonly method: string;
  /** Inline SVG for wide and narrow columns; colours are CSS variables, ids prefixed with the plot's. */
  readonly wide: string;
  readonly narrow: string;
  /** To take away, with the palette resolved. */
  readonly svg: string;
  /** The same as a picture, in base64, where one is asked for. */
  readonly png?: string;
  /** The drawn data, RFC 4180. */
  readonly csv: string;
  /** A table of the drawn data short enough to read (at most about 40 rows). */
  readonly table: { readonly caption: string; readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] };
  readonly problems: readonly Problem[];
  /** Where pictures are made of it: one drawing for each. */
  readonly stills?: readonly StillDrawing[];
}

/** What a picture shows of a plot: its colours are variables that also say whose each mark is, so that it can be built up run by run. */
export interface StillDrawing {
  readonly title: string;
  readonly alt: string;
  /** In which order its runs may come, with their styles; empty where nothing is drawn of runs. */
  readonly shown: readonly { readonly name: string; readonly k: number }[];
  readonly svg: string;
}

/** The figures of a comparison, with its runs. */
export interface ComparedSubject {
  /** Alias of the reference run. */
  readonly reference: string;
  /** In the author's order; `slot` is the place that the look follows, the place in this list when left out. */
  readonly runs: readonly { readonly alias: string; readonly slot?: number }[];
  /** The comparison's figures by address without its alias: `speedup.fast`. Those of a `figures.json` are read by `readPublishedFigures`. */
  readonly figures: FigureMap;
}
