/** What an author declares of a small table that has words of its own. Plain data. */
import type { Place } from '../problem.ts';

/** How an error that a table states is meant. */
export const ERROR_MEANINGS = ['limits', 'standard', '95 %'] as const;
export type ErrorMeaning = (typeof ERROR_MEANINGS)[number];

/** A column of ours, and what the table calls it: several names where each is a repeat. */
export interface MappedColumn {
  readonly name: string;
  readonly heads: readonly string[];
  readonly place: Place;
}

/** What is declared once of a test: which direction is good, and its unit where the table states none. */
export interface DeclaredTest {
  readonly better: 'higher' | 'lower';
  readonly unit?: string;
}

export interface TableMapping {
  readonly columns?: readonly MappedColumn[];
  /** Their words -> ours. A cell counts where all of it is the word. */
  readonly words?: Readonly<Record<string, string>>;
  /** Whose rows are read, where the table holds several settings or runs. */
  readonly rows?: { readonly column: string; readonly value: string; readonly place: Place };
  /** `wide`: a column a test or spot, a row a repeat. */
  readonly layout?: 'long' | 'wide';
  /** What every row has under a column of ours that the table does not have, or leaves empty. */
  readonly everyRow?: Readonly<Record<string, string>>;
  /** Units of columns of ours whose cells and header state none. */
  readonly units?: Readonly<Record<string, string>>;
  readonly tests?: Readonly<Record<string, DeclaredTest>>;
  readonly errorIs?: ErrorMeaning;
  /** The author has looked, and all of it may go out, read or not. */
  readonly share?: 'as it came';
}

/** What the reader of a kind of table asks for. */
/** A column of ours: what it tells, in a clause, and a cell as it may be written. */
export interface ColumnFacts {
  readonly about: string;
  readonly example: string;
}

export interface TableForm {
  /** For rules' names and messages: `scores`. */
  readonly kind: string;
  /** Columns that it needs, then those that it can use. */
  readonly needed: readonly string[];
  readonly optional: readonly string[];
  /** What each of them tells, for the reference. */
  readonly columns: Readonly<Record<string, ColumnFacts>>;
  /** Of a wide table: the column that the heads are of, and the one that the cells are of. */
  readonly wide?: { readonly head: string; readonly cell: string };
  /** The column whose own column of units the table may lack. */
  readonly unitOf?: { readonly cell: string; readonly unit: string };
}
