/** What may stand behind a key, as the reference and an editor tell it: beside its kind of node, which the schema checks. */
import type { Kind } from './quantity-kinds.ts';

/** Forms of a text, in words. */
export const FORMS = {
  words: 'words',
  'yes or no': '`yes` or `no`',
  day: 'a day: year, month, day',
  instant: 'an instant: date, time and zone',
  id: 'an id',
  path: 'a path below `data/`',
  address: 'an https address',
  page: 'the path of a page of the site',
  expression: 'an expression',
  'time zone': 'a name of the IANA time zone database, an offset, or `UTC`',
  column: 'the header of a column',
  name: 'lower-case letters and digits in words joined by `_`',
  lines: 'a line of the log, or a range such as `12 .. 15`',
  number: 'a whole number',
} as const;

export type Form = keyof typeof FORMS;

/** One of the first three says what a text may be; `keys` or `each` what a mapping or list may hold; `means` says it in words where neither does. */
export interface Takes {
  /** Only these words. */
  readonly words?: readonly string[];
  /** A number with its unit. */
  readonly quantity?: Kind;
  readonly form?: Form;
  /** What it may be, in words. */
  readonly means?: string;
  /** Keys below it. */
  readonly keys?: Below;
  /** Keys of each item of its list, or below each name of its mapping. */
  readonly each?: Below;
  /** What counts where the key is left out. */
  readonly otherwise?: string;
  /** The value as an author may write it, where it is not that of the line which messages show. */
  readonly example?: string;
}

/** A shape, by its name in the reference. */
export interface Below {
  readonly title: string;
  readonly shape: { readonly entries: object };
}
