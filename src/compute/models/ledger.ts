/** The ledger of a note or script. */
import type { HeldNote, Link, Marks } from './shared.ts';

/** The ledger of a note or script: as a page and as JSON. */
export interface Ledgers {
  readonly page: string;
  readonly json: string;
}

/** Every number of a note or script, with all that holds it. */
export interface LedgerModel {
  readonly kind: 'ledger';
  readonly title: string;
  readonly marks: Marks;
  /** The note or script. */
  readonly of: Link & { readonly kind: 'note' | 'script' };
  readonly json: string;
  readonly rows: readonly (HeldNote & {
    /** "value", "stated number", "claim", "number of a table", "highlight". */
    readonly kind: string;
    /** What the author wrote, where that is not what is printed. */
    readonly text: string;
    /** How a script says it, where that is not what is printed; '' else. */
    readonly said: string;
    /** Before rounding, with its standard uncertainty. */
    readonly value: string;
    readonly verdict: string;
    /** "content/notes/x.md:12:3" */
    readonly place: string;
    /** Whether it stands in the text; highlights do not. */
    readonly inText: boolean;
  })[];
}
