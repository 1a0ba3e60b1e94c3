/** Copies of logs below data/. No name of a folder outside goes with them: paths of data are published, and a folder may bear a person's name. */
import { constants, copyFileSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join, relative, resolve, sep } from 'node:path';
import { NAMELESS } from '../add/basis.ts';
import { endingOf, stemOf } from '../add/ending.ts';
import type { Output } from '../add/output.ts';

/** The folder below data/ that takes logs from elsewhere. */
export const LOGS = NAMELESS;

/** The path, from the publication's folder, of a log: its own where it lies below data/ already, else that of a copy with the same bytes. */
export function copyLog(root: string, path: string, output: Output): string {
  const from = resolve(path);
  if (from.startsWith(join(root, 'data') + sep)) return relative(root, from);
  const folder = join(root, 'data', LOGS);
  mkdirSync(folder, { recursive: true });
  const bytes = readFileSync(from);
  const own = basename(from);
  // Without case: two names that differ in case alone are one name on other systems.
  const there = new Map(readdirSync(folder).map((name) => [name.toLowerCase(), name]));
  for (let number = 1; ; number++) {
    const name = number === 1 ? own : `${stemOf(own)}-${number}${endingOf(own)}`;
    const taken = there.get(name.toLowerCase());
    if (taken !== undefined && !bytes.equals(readFileSync(join(folder, taken)))) continue;
    const to = join('data', LOGS, taken ?? name);
    if (taken === undefined) copyFileSync(from, join(root, to), constants.COPYFILE_EXCL);
    if (number > 1 && taken === undefined) output.out(`${path} is copied to ${to}: another log has its name.\n`);
    return to;
  }
}
