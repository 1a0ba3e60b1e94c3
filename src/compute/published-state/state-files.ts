/** What published states put beside the pages: redirects, and corrections ready to paste. */
import type { Manifest } from '../results.ts';
import type { Store } from '../store/store.ts';
import type { Redirect } from './addresses.ts';
import { redirectPage } from './redirect-page.ts';
import { formerPath } from './redirects.ts';

type Files = Manifest['files'][number][];

/** The page of a note or script. */
const NOTE = /^(notes|scripts)\/[a-z0-9-]+\/$/;

/**
 * A page that leads on, or the same bytes at their former address. A file that gives way to a page becomes a folder with that page. With
 * the page of a note go the files beside it (archive, citations, ledger), under their former names.
 */
export function redirectFiles(
  store: Store,
  redirects: readonly Redirect[],
  files: Manifest['files'],
  titleOf: (page: string) => string,
): Files {
  const blobs = new Map(files.map(({ path, blob }) => [path, blob]));
  const led = redirects.flatMap(({ from, to }) => {
    const same = blobs.get(to);
    if (same !== undefined && !from.endsWith('/')) return [{ path: from, blob: same }];
    const folder = from.endsWith('/') ? from : `${from}/`;
    return [{ path: `${folder}index.html`, blob: store.keep(redirectPage(folder, to, titleOf(to))) }];
  });
  const taken = new Set(led.map(({ path }) => path));
  return [...led, ...besideNotes(redirects, files).filter(({ path }) => !taken.has(path))];
}

function besideNotes(redirects: readonly Redirect[], files: Manifest['files']): Files {
  const folderOf = (page: string) => NOTE.exec(page)?.[1];
  const renamed = redirects.filter(({ from, to }) => folderOf(from) !== undefined && folderOf(from) === folderOf(to));
  return renamed.flatMap(({ from, to }) =>
    files.filter(({ path }) => path.startsWith(to)).map(({ path, blob }) => ({ path: formerPath(path, from, to), blob })),
  );
}
