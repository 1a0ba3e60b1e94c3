/** Addresses within a page: what follows the `#`, readable and without anything that a link would have to escape. */

/** An expression or address as a fragment: `rated.score."aes-1t"` → `rated.score.aes-1t`. '' where nothing of it is left. */
export function fragmentOf(text: string): string {
  return text
    .replaceAll(/["']/g, '')
    .replaceAll(/[^A-Za-z0-9._]+/g, '-')
    .replaceAll(/^[-.]+|[-.]+$/g, '');
}

/** The first of `wanted`, `wanted-2`, `wanted-3` … that is free. */
export function freeId(wanted: string, taken: ReadonlySet<string>): string {
  let id = wanted;
  for (let count = 2; taken.has(id); count += 1) id = `${wanted}-${count}`;
  return id;
}

const LETTERS = 5;

/**
 * Five letters and digits that stand for a text: they tell apart what otherwise reads the same, and vouch for nothing.
 * Source: FNV-1a, 32 bits (Fowler, Noll and Vo; RFC 9923) over UTF-8, in base 36.
 */
export function shortDigest(text: string): string {
  let hash = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(text)) hash = Math.imul(hash ^ byte, 0x01000193);
  return (hash >>> 0).toString(36).padStart(LETTERS, '0').slice(-LETTERS);
}
