/** The options of MiniSearch, which must be equal when an index is written and when it is read. */
import type { Options } from 'minisearch';
import type { Document } from './document.ts';
import { plainWord, wordsOf } from './terms.ts';

export const OPTIONS: Options<Document> = {
  idField: 'path',
  fields: ['title', 'name', 'text'],
  storeFields: ['kind', 'title', 'path', 'text'],
  tokenize: (text) => wordsOf(text),
  processTerm: (term) => plainWord(term),
};
