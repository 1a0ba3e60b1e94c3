/** The index as it is written at build. */
import MiniSearch from 'minisearch';
import type { Document, SearchFile } from './document.ts';
import { OPTIONS } from './options.ts';

/** The index of these documents. The same documents in the same order give the same bytes; two of one path are a fault of the caller, and throw. */
export function writeIndex(documents: readonly Document[]): SearchFile {
  const search = new MiniSearch<Document>(OPTIONS);
  search.addAll(documents);
  return { format: 1, index: search.toJSON() };
}
