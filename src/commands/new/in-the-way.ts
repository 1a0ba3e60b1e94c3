/** What keeps a file from being written or read, judged before the first is. */
import { accessSync, constants, existsSync, lstatSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';

/** Why a file of the publication can neither be written nor kept, as a sentence; undefined where nothing is in the way. */
export function wayFault(root: string, path: string): string | undefined {
  const target = join(root, path);
  for (const at of [...foldersAbove(target), target]) {
    const shown = at.startsWith(root + sep) ? relative(root, at) : at;
    const found = statSync(at, { throwIfNoEntry: false });
    if (found === undefined) return isThere(at) ? `${shown} is a link to what is not there. ${REMEDY}` : undefined;
    if (at === target) return found.isDirectory() ? `${shown} is a folder, and a file is to stand there. ${REMEDY}` : undefined;
    if (!found.isDirectory()) return `${shown} is a file, and a folder is to stand there. ${REMEDY}`;
  }
  return undefined;
}

/** The outermost first. */
function foldersAbove(path: string): string[] {
  const above = dirname(path);
  return above === path ? [] : [...foldersAbove(above), above];
}

const REMEDY = 'Move it away, then run the same command again.';

/** Whether a path has anything, be it a link that leads nowhere. */
export function isThere(path: string): boolean {
  return lstatSync(path, { throwIfNoEntry: false }) !== undefined;
}

/** Whether a path is a file that this user may read. */
export function isReadable(path: string): boolean {
  if (!isFile(path)) return false;
  try {
    accessSync(path, constants.R_OK);
    return true;
  } catch {
    return false;
  }
}

/** False too where a part of the path is no folder. */
export function isFile(path: string): boolean {
  return existsSync(path) && statSync(path).isFile();
}

/** The text of a file; undefined where there is none. */
export function textOf(path: string): string | undefined {
  return isFile(path) ? readFileSync(path, 'utf8') : undefined;
}
