/** What record copies bring to a site: their pages, the list of them, the files beside both. */
import { type Beside, copiesIndex, recordCopiesModel, recordCopyModel } from '../pages/record-copy.ts';
import { plotFiles } from '../plot-files.ts';
import { jsonText } from '../published.ts';
import type { Manifest, PageModel } from '../results.ts';
import type { Store } from '../store.ts';
import { copyFigures, copyPath, type PrintedCopies } from './print-copies.ts';

/** The page of each copy, and the list where there is any. */
export function copyPages({ copies }: PrintedCopies, beside: Beside): [path: string, model: PageModel][] {
  const list: [string, PageModel][] = copies.length === 0 ? [] : [['record-copies/', recordCopiesModel(copies)]];
  return [...list, ...copies.map((printed): [string, PageModel] => [copyPath(printed.copy.id), recordCopyModel(printed, beside)])];
}

/** Each copy's own bytes, its figures, the downloads of its plots; and the index for programs, also where it is empty. */
export function copyFiles(store: Store, { copies }: PrintedCopies): Manifest['files'][number][] {
  const files = copies.flatMap((printed) => {
    const path = copyPath(printed.copy.id);
    return [
      { path: `${path}record.json`, blob: store.keep(printed.text) },
      { path: `${path}figures.json`, blob: store.keep(copyFigures(printed)) },
      ...plotFiles(path, printed.plots),
    ];
  });
  return [...files, { path: 'record-copies/index.json', blob: store.keep(jsonText(copiesIndex(copies))) }];
}
