/** Where files of data stand in an archive: the author's at their own paths, what is made from them beside. */

import type { SiteContents } from '../contents/site-contents.ts';
import type { DataFile } from '../models/data-file.ts';
import type { ArchiveScope } from './scope.ts';

export interface PlacedFile {
  /** `runs/<id>` or `attempts/<id>`. */
  readonly of: string;
  readonly file: DataFile;
  /** Below the project folder; null where it is not offered. */
  readonly path: string | null;
}

/** Below it stands what the site publishes, at the addresses that it has there. */
export const AS_PUBLISHED = 'as-published/';

/** All files of data of the scope, offered or not; descriptions are written anew, for the archive as a whole. */
export function placedData({ data }: SiteContents, { runs, attempts }: ArchiveScope): PlacedFile[] {
  const subjects = [...[...runs.keys()].map((id) => `runs/${id}`), ...[...attempts.keys()].map((id) => `attempts/${id}`)];
  const all = subjects.flatMap((of) => (data.get(of) ?? []).map((file) => ({ of, file })));
  const folder = freeFolder(all.map(({ file }) => file.source));
  return all
    .filter(({ file }) => file.role !== 'description')
    .map(({ of, file }) => ({ of, file, path: file.path === null ? null : pathOf(file, file.path, folder) }));
}

function pathOf({ role, source, name }: DataFile, path: string, folder: string): string {
  if (role === 'cleaned') return folder + name;
  return source === '' ? AS_PUBLISHED + path : source;
}

/** A folder of data/ that none of the author's files is in. */
function freeFolder(sources: readonly string[]): string {
  let folder = 'data/cleaned/';
  while (sources.some((source) => source.toLowerCase().startsWith(folder))) folder = `${folder.slice(0, -1)}-/`;
  return folder;
}
