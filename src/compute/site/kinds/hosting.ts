/** No page, but the file that says how a host serves all of them. */
import { HEADERS_FILE, headersJson } from '../../outgoing/headers.ts';
import type { PageKind } from '../page-kind.ts';

export const HOSTING: PageKind = {
  folder: null,
  pages: () => [],
  files: ({ store, parts }) => [{ path: HEADERS_FILE, blob: store.keep(headersJson(parts.site.base)) }],
};
