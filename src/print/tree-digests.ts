/** What a folder holds, file by file. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { digest } from '../compute/store/digest.ts';
import { compareText } from '../problem.ts';

/** The digest of each file below a folder by its path, with forward slashes, in the order of paths; '' of what is neither a file nor a folder. */
export function treeDigests(folder: string): ReadonlyMap<string, string> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => !entry.isDirectory())
    .map((entry): [string, boolean] => [join(entry.parentPath, entry.name), entry.isFile()])
    .sort(([a], [b]) => compareText(a, b));
  return new Map(
    files.map(([path, read]) => [relative(folder, path).split(sep).join('/'), read ? digest(readFileSync(path)) : '']),
  );
}
