/**
 * `dist/` is always one whole site. A new site is printed into a side folder; once it is complete a marker says so, and two
 * renames put it in place. Whoever comes next finishes or undoes what was cut short.
 */
import { existsSync, lstatSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

function paths(root: string) {
  const cache = join(root, '.cache');
  return {
    cache,
    site: join(root, 'dist'),
    next: join(cache, 'site-next'),
    last: join(cache, 'site-last'),
    complete: join(cache, 'site-complete'),
  };
}

/** The side folder that a build prints into. */
export function sideFolder(root: string): string {
  return paths(root).next;
}

/** Puts the printed side folder in the place of `dist/`. */
export function swap(root: string): void {
  const { next, complete } = paths(root);
  if (!existsSync(join(next, 'index.html'))) throw new Error(`${next} holds no site`);
  writeFileSync(complete, '');
  finishSwap(root);
}

/** Finishes a swap whose site was complete; otherwise clears away what is left of it. `dist/` is whole before and after. */
export function finishSwap(root: string): void {
  const { cache, site, next, last, complete } = paths(root);
  if (lstatSync(site, { throwIfNoEntry: false })?.isSymbolicLink()) {
    throw new Error('dist is a symbolic link, and the swap would replace it by a folder: let the host point at dist instead');
  }
  mkdirSync(cache, { recursive: true });
  if (existsSync(complete) && existsSync(next)) {
    if (existsSync(site)) {
      rmSync(last, { recursive: true, force: true });
      renameSync(site, last);
    }
    renameSync(next, site);
  }
  if (!existsSync(site) && existsSync(last)) renameSync(last, site);
  rmSync(complete, { force: true });
  rmSync(next, { recursive: true, force: true });
  rmSync(last, { recursive: true, force: true });
}
