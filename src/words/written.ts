/** What words makes of a note: HTML with numbered places for plots, and the ledger. */
import type { FigureMap } from '../figures/figure.ts';
import type { ImagePoint } from '../figures/surface/in-image.ts';
import type { Place, Problem } from '../problem.ts';
import type { Quantity } from '../quantities/quantity.ts';
import type { FrontKey, Photographs } from '../register/register.ts';
import type { PlotRequest } from '../register/requests.ts';
import type { ScriptText } from './script/script.ts';

/** One thing that an alias of a note stands for: a run, a comparison, the attempts on a specimen, or what somebody else published. */
export interface Subject {
  readonly kind: 'run' | 'comparison' | 'attempts' | 'quoted';
  readonly id: string;
  readonly title: string;
  /** Keys without the alias, as in RunFigures. */
  readonly figures: FigureMap;
  readonly facts: ReadonlyMap<string, Quantity>;
  /** What it is in words: `device`, `specimen`. They can be counted and told apart, not printed. */
  readonly names?: ReadonlyMap<string, string>;
  /** True where the log could not be used: its problems stand elsewhere, and words that need it say nothing more. */
  readonly unusable?: boolean;
  /** Channel names with their quantity, in declared order: plots are checked against them. */
  readonly channels: readonly { readonly name: string; readonly quantity: string }[];
  /** Of a run: photographs on which spots of its surface readings are marked. */
  readonly photographs?: Photographs;
}

export type LedgerKind = 'value' | 'stated' | 'claim' | 'table' | 'highlight';

/** One number of the note. Positions count from the start of the file. */
export interface LedgerEntry {
  /** Of its element in the page, and of its row in the ledger's. */
  readonly id: string;
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly kind: LedgerKind;
  /** What the author wrote between the brackets, or '' where there is none. */
  readonly text: string;
  readonly expression: string;
  /** In `unit`, unrounded. */
  readonly value: number;
  readonly unit: string;
  /** Standard uncertainty in `unit` (K where that is °C), null = unknown. */
  readonly u: number | null;
  /** As printed on the page, unit included. */
  readonly shown: string;
  /** `printUncertainty` of the result. Not part of the published ledger. */
  readonly uncertainty: string;
  readonly verdict: 'printed' | 'holds' | 'fails' | 'cannot be told';
  /** For readers: on what a stated number or claim rests, in words. Not part of the published ledger. */
  readonly rests?: string;
  /** Words that would hold in the place of stated ones that fail, or what a claim that fails says as a correction. Not part of the published ledger. */
  readonly instead?: string;
  /** Figures that hold it: addresses with run ids, for the page's notes. Not part of the published ledger. */
  readonly held: readonly HeldBy[];
}

/** A number whose place in the page is not known yet. */
export type DraftEntry = Omit<LedgerEntry, 'id'>;

/** A number that the text asks for and the data does not give. A table prints that it is absent; elsewhere that is an error. */
export interface AbsentEntry {
  readonly kind: LedgerKind;
  readonly line: number;
  readonly column: number;
  readonly expression: string;
  readonly why: string;
  /** What it asks for. */
  readonly held?: readonly HeldBy[];
  /** Of a published note: what it may say in the place of the number that went out, once a correction says why, and where its problems stand. */
  readonly instead?: string;
  readonly at?: readonly { readonly line: number; readonly column: number }[];
}

export interface HeldBy {
  readonly alias: string;
  /** Run id. */
  readonly subject: string;
  /** Address without the alias. */
  readonly address: string;
  /** Catalogue name for the link to its definition; absent for settings, conditions and ratings. */
  readonly figure?: string;
  /** What stood in for something that was not measured: said beside the number. */
  readonly standsIn?: string;
  /** Who published it, where it is none of one's own figures: said beside the number. */
  readonly quoted?: string;
}

/** The sentence of a held number, as printed. */
export interface InSentence {
  readonly text: string;
  /** With marks for its held numbers, the number's own among them: the same when only the data has changed. */
  readonly pattern: string;
}

/** A link to another page of the site, as written. */
export interface PageLink {
  readonly href: string;
  readonly place: Place;
}

/** A picture that the text asks for. */
export interface PictureRequest {
  /** Below data/; '' where it could not be told. */
  readonly path: string;
  /** What is to be seen, in plain words. */
  readonly alt: string;
  /** How many stand side by side with it, itself among them. */
  readonly beside: number;
  /** Where spots are marked, by their numbers in the table below it. */
  readonly marks?: readonly ImagePoint[];
  readonly place: Place;
}

/** Plain words of the front matter, and the numbers (counted from 1) of held numbers among them. */
export type PlainWords = readonly (string | number)[];

export interface Written {
  /** HTML in pieces; between two strings stands the number of a plot (index into `plots`). */
  readonly pieces: readonly (string | number)[];
  readonly plots: readonly PlotRequest[];
  /** Pictures; HTML has a mark where each goes (`withPictures`). */
  readonly pictures?: readonly PictureRequest[];
  /** Index of the plot that the front matter asks for, which no piece of the text has a place for. */
  readonly lead?: number;
  /** Title, summary and disclosure, where the note has them. */
  readonly front?: Readonly<Partial<Record<FrontKey, PlainWords>>>;
  /** In reading order; each is linked from the element that has its id. Highlights come last and stand in no text. */
  readonly entries: readonly LedgerEntry[];
  /** Numbers that the data does not give. */
  readonly absent?: readonly AbsentEntry[];
  /** By index of the entry, for those that stand in the text. */
  readonly sentences?: readonly InSentence[];
  /** Of a script: what is said and what is on screen. */
  readonly script?: ScriptText;
  /** Links that lead to other pages of the site; which there are is known where the site is put together. */
  readonly links?: readonly PageLink[];
  /** Of a published script: what stands against publishing it anew, its figures being absent. */
  readonly unborne?: readonly Problem[];
  readonly problems: readonly Problem[];
}
