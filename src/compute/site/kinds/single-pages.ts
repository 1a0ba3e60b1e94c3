/** Pages of which a site has one. */
import { readFileSync } from 'node:fs';
import { accuracyModel } from '../../pages/accuracy.ts';
import { compareModel } from '../../pages/compare.ts';
import { homeModel } from '../../pages/home.ts';
import { methodModel } from '../../pages/method.ts';
import { MISSING_IN_DEV } from '../../results.ts';
import type { PageKind } from '../page-kind.ts';

export const HOME: PageKind = { folder: null, pages: ({ parts }) => [['', homeModel(parts)]] };

export const FREE_COMPARISON: PageKind = { folder: null, pages: ({ parts }) => [['compare/', compareModel(parts)]] };

/** A log begins on the device under test: the script that writes one is beside the page that says how logs are read. */
const LOGGER = new URL('../side-files/soakproof-logger.sh', import.meta.url);

export const METHOD: PageKind = {
  folder: null,
  pages: ({ parts, accuracy }) => [
    ['method/', parts.memo.of('method', accuracy, () => methodModel(accuracy))],
    ['method/accuracy/', accuracyModel(accuracy)],
  ],
  files: ({ store }) => [{ path: 'method/soakproof-logger.sh', blob: store.keep(readFileSync(LOGGER)) }],
};

/** Astro's dev server keeps /404 to itself; dev sends missing addresses elsewhere instead (print/dev.ts). */
export const NOT_FOUND: PageKind = {
  folder: null,
  pages: ({ scope }) => [[scope === 'all' ? MISSING_IN_DEV : '404', { kind: 'not-found' }]],
};
