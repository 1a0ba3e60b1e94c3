/** The model of the search page. */
import type { Document } from '../../search/document.ts';
import type { RunsModel, SearchModel } from '../models/discovery.ts';
import { KINDS } from './search-documents.ts';

/** What can be found, by kind, and the lists that hold it all for those who browse. */
export function searchModel(documents: readonly Document[], { invented }: RunsModel): SearchModel {
  const kinds = KINDS.map((kind) => ({ ...kind, count: documents.filter((document) => document.kind === kind.id).length }));
  return {
    kind: 'search',
    invented,
    lists: [
      { title: 'Notes and scripts', path: '' },
      { title: 'Runs, devices and comparisons', path: 'runs/' },
      { title: 'Figures and method', path: 'method/' },
    ],
    kinds: kinds.filter(({ count }) => count > 0),
  };
}
