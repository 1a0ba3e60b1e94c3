/** Stage 2: Astro prints the pages into a side folder, the files go beside them, the folders swap. */
import { copyFileSync, existsSync, linkSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { MANIFEST_VARIABLE, type Manifest } from '../compute/results.ts';
import { openStore } from '../compute/store/store.ts';
import { printedPages } from './printed-pages.ts';
import { sideFolder, swap } from './swap.ts';

/**
 * Prints the site of a manifest and puts it in the place of `dist/`. Throws where a page or the disk fails; `dist/` is then
 * as it was. Returns how many pages were printed; the others were used again.
 */
export async function print(root: string, manifest: Manifest): Promise<number> {
  const marker = join(root, '.cache', 'building');
  const pages = printedPages(root);
  // A build that was killed may have left pages of its own among those that Astro would use again, a bad disk other things.
  const force = existsSync(marker) || !pages.trusted();
  writeFileSync(marker, '');
  const side = sideFolder(root);
  process.env.ASTRO_TELEMETRY_DISABLED = '1';
  // A shell may have set it otherwise, and pages would then differ.
  process.env.NODE_ENV = 'production';
  // Pages read this manifest and no other, whatever another command writes meanwhile.
  process.env[MANIFEST_VARIABLE] = openStore(root).keep(JSON.stringify(manifest));
  const { build } = await import('astro');
  await build({ root, outDir: side, cacheDir: pages.cacheDir, logLevel: 'error', force });
  // Static hosts look for this name. Astro prints it only for a route that it would then print anew in every build.
  renameSync(join(side, '404', 'index.html'), join(side, '404.html'));
  rmSync(join(side, '404'), { recursive: true });
  copyFiles(root, side, manifest.files);
  pages.remember();
  rmSync(marker);
  swap(root);
  return (globalThis as { soakproofPagesPrinted?: number }).soakproofPagesPrinted ?? 0;
}

/** A second name for the stored bytes where the disk allows it, which is much quicker than a copy. */
function place(from: string, to: string): void {
  try {
    linkSync(from, to);
  } catch {
    copyFileSync(from, to);
  }
}

function copyFiles(root: string, side: string, files: Manifest['files']): void {
  const store = openStore(root);
  const made = new Set<string>();
  for (const { path, blob } of files) {
    const target = join(side, path);
    const folder = dirname(target);
    if (!made.has(folder)) mkdirSync(folder, { recursive: true });
    made.add(folder);
    place(store.pathOf(blob), target);
  }
}
