/** The list of what the command put into a folder of pictures: it tells our files from an author's. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { digest } from '../../compute/store/digest.ts';
import { compareText } from '../../problem.ts';

export const LIST = 'drawn-from.json';

/** By path within the folder: digests of what a file was made from, and of its own bytes. */
export type Drawn = Readonly<Record<string, { readonly from: string; readonly sha256: string }>>;

/** The list of a folder; an empty one where there is none that can be read. */
export function listIn(folder: string): Drawn {
  try {
    return JSON.parse(readFileSync(join(folder, LIST), 'utf8')) as Drawn;
  } catch {
    return {};
  }
}

/** Writes the list of a folder. */
export function writeList(folder: string, list: Drawn): void {
  const sorted = Object.fromEntries(Object.entries(list).sort(([a], [b]) => compareText(a, b)));
  writeFileSync(join(folder, LIST), `${JSON.stringify(sorted, null, 1)}\n`);
}

/** SHA-256 of a file's bytes; undefined where there is no file. */
export function digestAt(path: string): string | undefined {
  try {
    return digest(readFileSync(path));
  } catch {
    return undefined;
  }
}
