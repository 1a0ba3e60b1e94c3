/** What words makes of a script beside its HTML: what is said, in order, what is on screen meanwhile, and under which heading. */

/** HTML in pieces; between them held numbers (by their number on the page, from 1) and plots (by their index). */
export type ScriptPiece = string | { readonly held: number } | { readonly plot: number };

/** Words in pieces; how a held number is said follows from its entry in the ledger. */
export type SaidPiece = string | { readonly held: number };

interface Block {
  readonly html: readonly ScriptPiece[];
  readonly said: readonly SaidPiece[];
}

/** A table that is looked at, as pictures show it. */
export interface ScriptTable {
  readonly caption: readonly SaidPiece[];
  /** The first is its head. */
  readonly rows: readonly (readonly (readonly SaidPiece[])[])[];
}

export interface HeadingBlock extends Block {
  readonly kind: 'heading';
  readonly depth: number;
  readonly id: string;
}

/** A cue as its author states it. */
export interface StatedCue {
  /** Seconds; null where the time is to be found. */
  readonly at: number | null;
  /** Ids of plots, of the script or of its note, that it shows besides those that stand in it. */
  readonly shows: readonly string[];
}

/** What is on screen. */
export interface CueBlock extends Block, StatedCue {
  readonly kind: 'cue';
  readonly tables: readonly ScriptTable[];
  /** Its words in emphasis: what viewers are to read, where the others say what they are to see. */
  readonly captions: readonly (readonly SaidPiece[])[];
  readonly line: number;
  readonly column: number;
}

/** A paragraph, list or quotation that is spoken. */
export interface TextBlock extends Block {
  readonly kind: 'said';
}

/** A table, plot or code outside of cues, on the page and never spoken. */
export interface ShownBlock extends Block {
  readonly kind: 'shown';
  readonly tables: readonly ScriptTable[];
}

export type ScriptBlock = HeadingBlock | CueBlock | TextBlock | ShownBlock;

export type ScriptText = readonly ScriptBlock[];
