/** What the head of a packed file says besides its text: a name, a comment, fields of the packer. */

/** Bits of the head that say which of them there are (RFC 1952, 2.3.1). */
const [EXTRA, NAME, COMMENT] = [4, 8, 16];
/** Bytes of the head before them. */
const FIXED = 10;

/**
 * Whether the head of a gzip file holds more than its own name, which nobody reads and which would go out with it. A name that was
 * cut off counts. `file`: path of the file as it lies.
 */
export function saysMore(head: Uint8Array, file: string): boolean {
  const flags = head[3] ?? 0;
  if ((flags & (EXTRA | COMMENT)) !== 0) return true;
  if ((flags & NAME) === 0) return false;
  const end = head.indexOf(0, FIXED);
  const name = String.fromCharCode(...head.subarray(FIXED, end < 0 ? FIXED : end));
  const own = file.slice(file.lastIndexOf('/') + 1);
  return name !== own && `${name}.gz` !== own;
}
