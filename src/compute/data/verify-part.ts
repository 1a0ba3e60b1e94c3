/** The part of a site by which a reader holds a downloaded file against what was published: a page, and the digests as JSON. */

import type { FileBeside, OfferedData } from '../models/data-file.ts';
import type { Manifest, PageModel, VerifyModel } from '../results.ts';
import { jsonText } from '../store/json-text.ts';
import type { Store } from '../store/store.ts';
import { digestsJson, type KnownFile, knownFiles } from './known-files.ts';

type File = Manifest['files'][number];

/** Where the digests of all files of data stand, below the base. */
export const DIGESTS = 'digests.json';
const VERIFY_PAGE = 'verify/';

/** The page and the file beside it, from all other pages and files of the site. */
export function verifyPart(
  store: Store,
  data: OfferedData,
  models: readonly (readonly [path: string, model: PageModel])[],
  files: readonly FileBeside[],
  pageOf: (subject: string) => string,
): { page: [path: string, model: VerifyModel]; file: File } {
  const titles = new Map(models.flatMap(([path, model]) => ('title' in model ? [[path, model.title] as const] : [])));
  const known = knownFiles(data, files, titles, pageOf);
  const invented = models.some(([, model]) => 'marks' in model && model.marks.invented);
  return {
    page: [VERIFY_PAGE, { kind: 'verify', digests: DIGESTS, groups: groupsOf(known), invented }],
    file: { path: DIGESTS, blob: store.keep(jsonText(digestsJson(known))) },
  };
}

/** By page, in the order in which pages first come. */
function groupsOf(known: readonly KnownFile[]): VerifyModel['groups'] {
  const groups = new Map<string, { of: KnownFile['of']; files: KnownFile[] }>();
  for (const file of known) {
    const group = groups.get(file.of.path) ?? { of: file.of, files: [] };
    group.files.push(file);
    groups.set(file.of.path, group);
  }
  return [...groups.values()];
}
