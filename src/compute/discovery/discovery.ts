/** The pages and files by which readers find the rest of the site. */
import { writeIndex } from '../../search/write.ts';
import type { SiteContents } from '../contents/site-contents.ts';
import type { PageModel } from '../results.ts';
import { runsJson, runsModel } from './runs-page.ts';
import { searchDocuments } from './search-documents.ts';
import { searchModel } from './search-page.ts';

type Paged = readonly [path: string, model: PageModel];

export interface Discovery {
  readonly pages: [path: string, model: PageModel][];
  /** Path and text. */
  readonly files: [path: string, text: string][];
}

/** The index of runs and the search, of a site that has these pages besides. */
export function discoveryOf(parts: SiteContents, models: readonly Paged[]): Discovery {
  const documents = searchDocuments(models);
  const comparisons = documents.filter(({ kind }) => kind === 'comparisons').map(({ title, path }) => ({ title, path }));
  const runs = runsModel(parts, comparisons);
  return {
    pages: [
      ['runs/', runs],
      ['search/', searchModel(documents, runs)],
    ],
    files: [
      ['runs/index.json', compactJson(runsJson(parts, runs))],
      ['search/index.json', compactJson(writeIndex(documents))],
    ],
  };
}

function compactJson(value: object): string {
  return `${JSON.stringify(value)}\n`;
}
