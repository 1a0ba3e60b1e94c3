/**
 * `dist/` is always one whole site. A new site is printed into a side folder, written out to the disk, and exchanged with `dist/` in one
 * step of the kernel. Where the kernel cannot do that, two renames take its place; whoever comes next undoes them if they were cut short.
 * What is left of a side folder is never published: nobody can say whether its build would have been finished.
 */
import { closeSync, existsSync, fsyncSync, lstatSync, mkdirSync, openSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { type Kernel, openKernel } from './exchange.ts';
import { Refusal } from './failure.ts';

function paths(root: string) {
  const cache = join(root, '.cache');
  return { cache, site: join(root, 'dist'), next: join(cache, 'site-next'), last: join(cache, 'site-last') };
}

/** The side folder that a build prints into. */
export function sideFolder(root: string): string {
  return paths(root).next;
}

/** Puts the printed side folder in the place of `dist/`. Throws where the disk refuses; `dist/` is then as it was. */
export async function swap(root: string, kernel?: Kernel): Promise<void> {
  const { cache, site, next } = paths(root);
  if (!existsSync(join(next, 'index.html'))) throw new Error(`${next} holds no site`);
  const { exchange, sync } = kernel ?? (await openKernel());
  // After a power cut, a name on the disk must not lead to content that never reached it.
  if (!sync(next)) syncTree(next);
  if (!existsSync(site)) renameSync(next, site);
  else if (!exchange(next, site)) renameTwice(root);
  syncFolder(root);
  syncFolder(cache);
  undoSwap(root);
}

/** The way without the kernel's exchange: for a moment there is no `dist/`. */
function renameTwice(root: string): void {
  const { site, next, last } = paths(root);
  rmSync(last, { recursive: true, force: true });
  renameSync(site, last);
  try {
    renameSync(next, site);
  } catch (thrown) {
    renameSync(last, site);
    throw thrown;
  }
}

/** Clears away what a swap or a build that was cut short has left; `dist/` is the last whole site before and after. */
export function undoSwap(root: string): void {
  const { cache, site, next, last } = paths(root);
  if (lstatSync(site, { throwIfNoEntry: false })?.isSymbolicLink()) {
    throw new Refusal('dist is a symbolic link, and a build would replace it by a folder: let the host point at dist instead');
  }
  mkdirSync(cache, { recursive: true });
  if (!existsSync(site) && existsSync(last)) renameSync(last, site);
  rmSync(next, { recursive: true, force: true });
  rmSync(last, { recursive: true, force: true });
}

function syncTree(folder: string): void {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) syncTree(path);
    else syncPath(path, 'r+');
  }
  syncFolder(folder);
}

/** A folder's names. Windows opens no folder, and keeps its names by itself. */
function syncFolder(folder: string): void {
  try {
    syncPath(folder, 'r');
  } catch (thrown) {
    const { code } = thrown as NodeJS.ErrnoException;
    if (code !== 'EPERM' && code !== 'EISDIR' && code !== 'EINVAL' && code !== 'EACCES') throw thrown;
  }
}

function syncPath(path: string, flags: 'r' | 'r+'): void {
  const descriptor = openSync(path, flags);
  try {
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
  }
}
