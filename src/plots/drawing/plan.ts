/** A plot before it is drawn: what it says, and how it is laid out in a given size. */
import type { Problem } from '../../problem.ts';
import type { PlotRequest } from '../../register/requests.ts';
import type { AttemptsSubject, ComparedSubject, Drawn, PlotSubject, StillDrawing } from './drawn.ts';
import type { Size } from './size.ts';
import type { Spec } from './vega.ts';

export interface Plan extends Pick<Drawn, 'title' | 'about' | 'along' | 'alt' | 'method' | 'csv' | 'table'> {
  /** The Vega-Lite specification in that size. */
  readonly layOut: (size: Size) => Spec;
  /** In which order a picture may show what is drawn, run after run (or channel after channel); empty where nothing is drawn of runs. */
  readonly shown: StillDrawing['shown'];
  /** Of a chart of several panels: each as it stands in a picture of its own. */
  readonly parts?: () => readonly Plan[];
}

/** A plan, or why there is none: located errors. */
export type Planned = Plan | readonly Problem[];

/** What a kind of plot offers. */
export type Planner = (
  request: PlotRequest,
  subjects: readonly PlotSubject[],
  attempts?: readonly AttemptsSubject[],
  compared?: ComparedSubject | null,
) => Planned;

/** Why there is nothing to draw: a sentence for readers. */
export interface Undrawn {
  readonly why: string;
}

export function isPlan(planned: Planned | Undrawn): planned is Plan {
  return 'layOut' in planned;
}
