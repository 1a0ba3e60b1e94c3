/** The pages that Astro keeps from one build to the next, and whether they are still the ones that were printed. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { digestOf } from '../compute/store/digest.ts';
import { treeDigests } from './tree-digests.ts';

export interface PrintedPages {
  /** Astro's cache folder. */
  readonly cacheDir: string;
  /** Whether every kept page is as the last build left it. */
  trusted(): boolean;
  /** Remembers the kept pages as they now are. */
  remember(): void;
}

export function printedPages(root: string): PrintedPages {
  const cacheDir = join(root, '.cache', 'astro');
  const remembered = join(root, '.cache', 'printed');
  return {
    cacheDir,
    trusted: () => !existsSync(cacheDir) || (existsSync(remembered) && readFileSync(remembered, 'utf8') === treeDigest(cacheDir)),
    remember: () => writeFileSync(remembered, treeDigest(cacheDir)),
  };
}

function treeDigest(folder: string): string {
  return digestOf(treeDigests(folder));
}
