/** What words makes of a script beside its HTML: what is said, in order, what is on screen meanwhile, and under which heading. */

/** HTML in pieces; between them held numbers (by their number on the page, from 1) and plots (by their index). */
export type ScriptPiece = string | { readonly held: number } | { readonly plot: number };

/** Words in pieces; how a held number is said follows from its entry in the ledger. */
export type SaidPiece = string | { readonly held: number };

interface Block {
  readonly html: readonly ScriptPiece[];
  readonly said: readonly SaidPiece[];
}

export interface HeadingBlock extends Block {
  readonly kind: 'heading';
  readonly depth: number;
  readonly id: string;
}

/** What is on screen. */
export interface CueBlock extends Block {
  readonly kind: 'cue';
  /** The author's time in seconds; null where it is to be found. */
  readonly at: number | null;
  readonly line: number;
  readonly column: number;
}

/** `said`: a paragraph, list or quotation that is spoken. `shown`: a table, plot or code outside of cues, on the page and never spoken. */
export interface TextBlock extends Block {
  readonly kind: 'said' | 'shown';
}

export type ScriptBlock = HeadingBlock | CueBlock | TextBlock;

export type ScriptText = readonly ScriptBlock[];
