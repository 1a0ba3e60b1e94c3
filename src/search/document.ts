/** What a site's search finds, and the form of its index: written by stage 1, read in the reader's browser. Imports nothing of the project. */

export interface Found {
  /** Id of its kind: `notes`, `runs` … */
  readonly kind: string;
  readonly title: string;
  /** Below the base, with the anchor where it is a part of a page. */
  readonly path: string;
  /** Its plain words, from which snippets are cut. */
  readonly text: string;
}

export interface Document extends Found {
  /** Its name in addresses: `larch-fast`, `peak_temperature`; found as words, not shown. */
  readonly name: string;
}

/** `search/index.json`. */
export interface SearchFile {
  readonly format: 1;
  /** The index in the form in which MiniSearch writes itself. */
  readonly index: object;
}
