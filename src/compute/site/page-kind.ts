/** What a kind of page gives to the site. */
import type { CheckTable } from '../../figures/checks/results.ts';
import type { PageFolder } from '../../register/sections/former-addresses.ts';
import type { Archives } from '../archive/site-archives.ts';
import type { SiteContents } from '../contents/site-contents.ts';
import type { FileBeside } from '../models/data-file.ts';
import type { PrintedCopies } from '../record-copies/print-copies.ts';
import type { PageModel, Scope } from '../results.ts';
import type { Store } from '../store/store.ts';

/** All that pages are made from. */
export interface Ground {
  readonly store: Store;
  readonly parts: SiteContents;
  readonly copies: PrintedCopies;
  readonly archives: Archives;
  /** Published values beside ours. */
  readonly accuracy: readonly CheckTable[];
  readonly scope: Scope;
}

export type Page = [path: string, model: PageModel];

export interface PageKind {
  /**
   * The folder of content/ whose files have these pages, where a note brings them into the site: then their addresses are protected, and `was`
   * moves them. Null for all others.
   */
  readonly folder: PageFolder | null;
  /** Its pages in this site, by their paths below the base. */
  pages(ground: Ground): Page[];
  /** What stands beside them; their bytes are in the store. */
  files?(ground: Ground): FileBeside[];
}
