/** Searching the index in the reader's browser. */
import MiniSearch, { type SearchOptions } from 'minisearch';
import type { Document, Found, SearchFile } from './document.ts';
import { OPTIONS } from './options.ts';
import { wordsOf } from './terms.ts';

/** Something found, with the words of it that answer the query. */
export interface Hit extends Found {
  /** Plain words of the index, for the snippet. */
  readonly terms: readonly string[];
}

export interface Answer {
  readonly hits: readonly Hit[];
  /** False where nothing has all the words, and what has some of them stands instead. */
  readonly all: boolean;
}

export type Finder = (query: string) => Answer;

/** Words in titles count more, beginnings of words count, and longer words are found with a slip in five letters; numbers are not. */
const SEARCH: SearchOptions = {
  boost: { title: 4, name: 2 },
  prefix: true,
  fuzzy: (term) => (term.length > 4 && !/\d/.test(term) ? 0.2 : false),
};

/** Reads an index and gives the function that searches it. */
export function openIndex(file: SearchFile): Finder {
  const search = MiniSearch.loadJS<Document>(file.index as Parameters<typeof MiniSearch.loadJS>[0], OPTIONS);
  const ask = (query: string, combineWith: 'AND' | 'OR'): Hit[] =>
    search.search(query, { ...SEARCH, combineWith }).map((result) => {
      const { kind, title, path, text } = result as unknown as Found;
      return { kind, title, path, text, terms: result.terms };
    });
  return (query) => {
    if (wordsOf(query).length === 0) return { hits: [], all: true };
    const hits = ask(query, 'AND');
    return hits.length > 0 ? { hits, all: true } : { hits: ask(query, 'OR'), all: false };
  };
}
