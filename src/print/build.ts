/** Stage 2: Astro prints the pages into a side folder, the files go beside them, all is held to its digests, the folders are exchanged. */

import { constants, copyFileSync, existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { MANIFEST_VARIABLE, type Manifest } from '../compute/results.ts';
import { freeMemory } from '../compute/steps/free-memory.ts';
import { damaged } from '../compute/store/damage.ts';
import { blobPath, openStore } from '../compute/store/store.ts';
import { printedPages } from './printed-pages.ts';
import { standingSite } from './standing-site.ts';
import { sideFolder, swap } from './swap.ts';

/**
 * Prints the site of a manifest and puts it in the place of `dist/`. Throws where a page, the cache or the disk fails; `dist/` is then
 * as it was. Returns how many pages were printed; the others were used again. Where `dist/` is that site already, nothing is done.
 */
export async function print(root: string, manifest: Manifest): Promise<number> {
  const marker = join(root, '.cache', 'building');
  const pages = printedPages(root);
  const killed = existsSync(marker);
  const standing = standingSite(root, manifest);
  if (!killed && standing.stands()) return 0;
  // Such a build may have left pages of its own among those that Astro would use again, a bad disk other things.
  const force = killed || !pages.trusted();
  writeFileSync(marker, '');
  const side = sideFolder(root);
  rmSync(side, { recursive: true, force: true });
  process.env.ASTRO_TELEMETRY_DISABLED = '1';
  // A shell may have set it otherwise, and pages would then differ.
  process.env.NODE_ENV = 'production';
  // Pages read this manifest and no other, whatever another command writes meanwhile.
  process.env[MANIFEST_VARIABLE] = openStore(root).keep(JSON.stringify(manifest));
  const printed = globalThis as { soakproofPagesPrinted?: number };
  printed.soakproofPagesPrinted = 0;
  freeMemory();
  const { build } = await import('astro');
  await build({ root, outDir: side, cacheDir: pages.cacheDir, logLevel: 'error', force });
  // Static hosts look for this name. Astro prints it only for a route that it would then print anew in every build.
  renameSync(join(side, '404', 'index.html'), join(side, '404.html'));
  rmSync(join(side, '404'), { recursive: true });
  holdToPages(side, manifest.pages);
  copyFiles(root, side, manifest.files);
  pages.remember();
  const digests = standing.read(side);
  holdToDigests(digests, manifest.files);
  rmSync(marker);
  await swap(root);
  standing.remember(digests);
  return printed.soakproofPagesPrinted;
}

/** Throws where a page was not printed: one of a kind that has no route below `src/pages` would be missing without a word. */
export function holdToPages(side: string, pages: Manifest['pages']): void {
  const missing = pages.find(({ path }) => path !== '404' && !existsSync(join(side, path, 'index.html')));
  if (missing !== undefined)
    throw new Error(`No file below src/pages prints ${missing.path}, a page of the kind “${missing.kind}”.`);
}

/**
 * Copies, not second names: a host's or an editor's change of a file in `dist/` must not reach the store. The system copies, without the bytes
 * passing through here; `holdToDigests` then reads what came of it.
 */
function copyFiles(root: string, side: string, files: Manifest['files']): void {
  const made = new Set<string>();
  for (const { path, blob } of files) {
    const target = join(side, path);
    const folder = dirname(target);
    if (!made.has(folder)) mkdirSync(folder, { recursive: true });
    made.add(folder);
    copyBlob(root, blob, target);
  }
}

/** Damage in the store shows when the copy is held to its digest; a file that is missing there is damage too. */
function copyBlob(root: string, blob: string, target: string): void {
  try {
    copyFileSync(blobPath(root, blob), target, constants.COPYFILE_FICLONE);
  } catch (thrown) {
    throw (thrown as NodeJS.ErrnoException).code === 'ENOENT' ? damaged(`.cache/blobs/${blob}`) : thrown;
  }
}

/** Holds what will be published, read once more, to what was stored. Throws where a disk gives other bytes than were written. */
function holdToDigests(digests: ReadonlyMap<string, string>, files: Manifest['files']): void {
  for (const { path, blob } of files) if (digests.get(path) !== blob) throw damaged(`dist/${path}`);
}
