/** The pictures of a script, for its video. They are no part of the site: `npm run stills` draws them. */
import type { StillDrawing } from '../../plots/drawing/drawn.ts';

/** What a picture shows of a plot, its drawing in the store. */
export interface StillResult extends Omit<StillDrawing, 'svg'> {
  readonly svg: string;
}

export interface StillsModel {
  readonly title: string;
  /** The file of the note that it speaks for, if there is one. */
  readonly speaksFor: readonly string[];
  /** What stands at the foot of each. */
  readonly foot: { readonly of: string; readonly address: string };
  /** In the order of the script; highlights last. */
  readonly pictures: readonly PicturedThing[];
  /** Texts that go with the video, by the names of their files. */
  readonly texts: readonly (readonly [name: string, text: string])[];
}

export interface PicturedThing {
  /** The cue that it belongs to, counted from 1; 0 for what stands before the first, null for a highlight. */
  readonly cue: number | null;
  /** When it is due, s. */
  readonly at: number;
  /** Where the script asks for it, for messages. */
  readonly line: number;
  readonly column: number;
  /** Names it in its file. */
  readonly name: string;
  readonly shows: ShownPlot | ShownTable | ShownNumber | ShownWords;
}

export interface ShownPlot {
  readonly kind: 'plot';
  readonly stills: readonly StillResult[];
}

export interface ShownTable {
  readonly kind: 'table';
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export interface ShownNumber {
  readonly kind: 'number';
  /** "Steady temperature of fast". */
  readonly what: string;
  readonly shown: string;
  readonly uncertainty: string;
  /** The runs that it is of. */
  readonly of: string;
}

export interface ShownWords {
  readonly kind: 'words';
  readonly text: string;
}
