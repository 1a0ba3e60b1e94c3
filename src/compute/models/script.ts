/** A script, and the page that it is spoken from. */
import type { SpokenNumber, WordsModel } from './note.ts';
import type { Link, Marks, PagePlot } from './shared.ts';

/** A block of a script in HTML, in pieces. */
export interface SpokenBlock {
  readonly kind: 'heading' | 'said' | 'cue' | 'shown';
  /** Of a heading. */
  readonly depth: number;
  readonly id: string;
  /** Of a cue, when it is due; of a heading, when its section begins: "1:05". */
  readonly time: string;
  /** "about" where the time is an estimate, '' where the author or the video gives it. */
  readonly about: string;
  /** Of a cue: plots of its note that it shows. */
  readonly shows: readonly Link[];
  /** Of a cue: titles of its plots that were drawn anew since the script was published. */
  readonly redrawn: readonly string[];
  readonly pieces: readonly (string | SpokenNumber | PagePlot)[];
}

export interface ScriptModel extends WordsModel {
  readonly kind: 'script';
  /** The note that it speaks for, where that is published. */
  readonly note: Link | null;
  readonly length: {
    /** "2:31" */
    readonly time: string;
    readonly words: number;
    /** On what the times rest, in words. */
    readonly basis: string;
    readonly sections: readonly {
      readonly title: string;
      readonly id: string;
      readonly words: number;
      readonly time: string;
      readonly from: string;
    }[];
  };
  readonly blocks: readonly SpokenBlock[];
  readonly prompter: string;
  readonly files: { readonly txt: string; readonly vtt: string; readonly srt: string; readonly video: string };
}

/** A script to be read while speaking. */
export interface PrompterModel {
  readonly kind: 'prompter';
  readonly title: string;
  readonly marks: Marks;
  readonly script: Link;
  readonly pace: number;
  readonly words: number;
  readonly blocks: readonly {
    readonly kind: SpokenBlock['kind'];
    readonly time: string;
    /** Plain words in spoken form. */
    readonly text: string;
  }[];
}
