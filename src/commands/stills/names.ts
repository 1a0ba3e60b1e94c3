/** Names of files for pictures: short enough for any disk, and never the same one twice. */
import { shortDigest } from '../../words/page/fragment.ts';

/** Longest part of a name that comes from the script, in characters: with an extension and the name of a step, any disk takes it. */
const LONGEST = 100;
const LONGEST_STEP = 40;

/** A name as it is where it is short enough, else its beginning and a digest of the whole. */
export function shortened(name: string): string {
  if (name.length <= LONGEST) return name;
  const own = shortDigest(name);
  return `${name.slice(0, LONGEST - own.length - 1)}-${own}`;
}

/** Letters and digits that any disk takes in a name; the number before it tells steps of one beginning apart. */
export function stepName(name: string): string {
  const plain = name.normalize('NFKD').replace(/[^A-Za-z0-9_]+/g, '-');
  return plain.slice(0, LONGEST_STEP).replace(/^-+|-+$/g, '') || 'run';
}

/**
 * The names of the pictures of one thing: `wanted` with each of the endings. Where one of them is taken, `wanted-2`, `wanted-3` … is tried,
 * so that the pictures of a thing always begin alike. Disks that do not tell capitals apart exist: names do not differ by these alone.
 * The names are then taken.
 */
export function freeNames(wanted: string, endings: readonly string[], taken: Set<string>): string[] {
  for (let count = 1; ; count += 1) {
    const names = endings.map((ending) => (count === 1 ? wanted : `${wanted}-${count}`) + ending);
    if (names.some((name) => taken.has(name.toLowerCase()))) continue;
    for (const name of names) taken.add(name.toLowerCase());
    return names;
  }
}
