/** What a folder holds, file by file. */
import { readdirSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileDigest } from '../compute/store/file-digest.ts';
import { compareText } from '../problem.ts';

/**
 * The digest of each file below a folder by its path, with forward slashes, in the order of paths; '' of what is neither a file nor a folder.
 * `digestOf` gets the path of a file in the folder, and where it lies.
 */
export function treeDigests(
  folder: string,
  digestOf: (name: string, path: string) => string = (_, path) => fileDigest(path),
): ReadonlyMap<string, string> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => !entry.isDirectory())
    .map((entry): [string, boolean] => [join(entry.parentPath, entry.name), entry.isFile()])
    .sort(([a], [b]) => compareText(a, b));
  return new Map(
    files.map(([path, read]) => {
      const name = relative(folder, path).split(sep).join('/');
      return [name, read ? digestOf(name, path) : ''];
    }),
  );
}
