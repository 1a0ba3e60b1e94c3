/** A file of data as pages, descriptions, archives and lists of digests offer it. */

/** A file beside a page, in the page's folder; its bytes are in the store. */
export interface FileBeside {
  /** Below the base. */
  readonly path: string;
  readonly blob: string;
  /** Of data that readers may hold against its digest: what it is, in words. */
  readonly data?: string;
}

export type Role = 'log' | 'redacted' | 'cleaned' | 'scores' | 'image' | 'surface' | 'attempts' | 'description' | 'figures';

export interface DataFile {
  readonly role: Role;
  /** Name of the log that it is of, in a run with several. */
  readonly log?: string;
  /** In words: "log as it came". */
  readonly what: string;
  /** Name without folders. */
  readonly name: string;
  /** Below the base; null where the file is not offered here. The store has its bytes under `sha256`. */
  readonly path: string | null;
  /** Where else it can be had: an https address, which nothing here ever asks. */
  readonly elsewhere?: string;
  readonly sha256: string;
  readonly bytes: number;
  /** "171 kB" */
  readonly size: string;
  /** Rows of readings or of the table; null where that is not the point. */
  readonly rows: number | null;
  /** Why it is not offered, or what else to know of it; '' for nothing. */
  readonly note: string;
  /** The author's file that it is, `data/…`; '' where it is made from others. */
  readonly source: string;
}

/** All files of data of a site, by `runs/<id>` and `attempts/<id>`. */
export type OfferedData = ReadonlyMap<string, readonly DataFile[]>;
