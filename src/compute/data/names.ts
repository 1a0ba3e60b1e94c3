/** Names under which files of data are published. */

/**
 * The last step of a path: letters without their marks, as in ids, and a hyphen for what an address, an archive or a disk may not take.
 * Stable: it depends on nothing but the path, and not on whether a disk keeps a letter and its mark as one or two.
 */
export function offeredName(path: string): string {
  const letters = path
    .slice(path.lastIndexOf('/') + 1)
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '');
  const name = letters.replace(/[^A-Za-z0-9._-]+/g, '-');
  const plain = name.replace(/-*\.{2,}|-+\./g, '.').replace(/^[.-]+|[.-]+$/g, '');
  return plain === '' ? 'data' : plain;
}

/** What describes the files of a folder has its name from its standard (Data Package, "Descriptor"). */
export const DESCRIPTION = 'datapackage.json';

/**
 * Distinct names in the given order, also on disks that tell no case apart, and apart from the description's: a later one that is taken is
 * led by its role.
 */
export function distinctNames(files: readonly { readonly role: string; readonly name: string }[]): string[] {
  const taken = new Set<string>([DESCRIPTION]);
  return files.map(({ role, name }) => {
    let free = name;
    while (taken.has(free.toLowerCase())) free = `${role}-${free}`;
    taken.add(free.toLowerCase());
    return free;
  });
}

/** Bytes as people read them: "401 B", "171 kB", "1.24 MB" (SI prefixes: 1 kB = 1000 B). */
export function sizeText(bytes: number): string {
  const units = ['B', 'kB', 'MB', 'GB', 'TB'] as const;
  let unit = 0;
  let value = bytes;
  while (value >= 999.5 && unit < units.length - 1) {
    value /= 1000;
    unit += 1;
  }
  return `${unit === 0 ? value : Number(value.toPrecision(3))}\u00a0${units[unit]}`;
}
