/** What published states put beside the pages: redirects, and corrections ready to paste. */
import type { Manifest } from '../results.ts';
import type { Store } from '../store.ts';
import type { Redirect } from './addresses.ts';
import { redirectPage } from './redirect-page.ts';

type Files = Manifest['files'][number][];

/** A page that leads on, or the same bytes at their former address. A file that gives way to a page becomes a folder with that page. */
export function redirectFiles(
  store: Store,
  redirects: readonly Redirect[],
  files: Manifest['files'],
  titleOf: (page: string) => string,
): Files {
  const blobs = new Map(files.map(({ path, blob }) => [path, blob]));
  return redirects.flatMap(({ from, to }) => {
    const same = blobs.get(to);
    if (same !== undefined && !from.endsWith('/')) return [{ path: from, blob: same }];
    const folder = from.endsWith('/') ? from : `${from}/`;
    return [{ path: `${folder}index.html`, blob: store.keep(redirectPage(folder, to, titleOf(to))) }];
  });
}
