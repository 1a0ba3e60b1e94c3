/** Record copies: a page each, the list of them, and the files beside both. */
import { copyFiles, copyPages } from '../../record-copies/copy-pages.ts';
import type { PageKind } from '../page-kind.ts';

export const RECORD_COPIES: PageKind = {
  folder: null,
  pages: ({ store, parts, copies }) => copyPages(store, copies, parts),
  files: ({ store, parts, copies }) => copyFiles(store, copies, parts),
};
