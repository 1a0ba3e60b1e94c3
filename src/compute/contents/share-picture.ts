/** The picture of a page for links to it: what the page says of it, and its file. */
import type { FileBeside } from '../models/data-file.ts';
import { SHARE_SIZE, type SharePicture } from '../models/share.ts';
import type { SiteContents } from './site-contents.ts';

/** What the page at a path says of its picture; null where it has none. */
export function sharePicture({ shares }: Pick<SiteContents, 'shares'>, path: string): SharePicture | null {
  const drawn = shares.get(path);
  return drawn === undefined ? null : { path: `${path}share.png`, ...SHARE_SIZE, alt: drawn.alt };
}

/** Its file, where there is one. */
export function shareFile({ shares }: Pick<SiteContents, 'shares'>, path: string): FileBeside[] {
  const drawn = shares.get(path);
  return drawn === undefined ? [] : [{ path: `${path}share.png`, blob: drawn.png }];
}
