/** What the head of a packed file says besides its text: a name, a comment, fields of the packer. */

/** Bits of the head that say which of them there are (RFC 1952, 2.3.1). */
const [EXTRA, NAME, COMMENT] = [4, 8, 16];
/** Bytes of the head before them. */
const FIXED = 10;
/** Further than this no name is looked for. */
const LONGEST = 2 ** 16;

export interface Label {
  /** Whether there are fields of the packer's own. */
  readonly extra: boolean;
  /** The name and the comment, those that there are. */
  readonly words: readonly string[];
}

/** The label of the first member of a gzip file. */
export function labelOf(bytes: Uint8Array): Label {
  const flags = bytes[3] ?? 0;
  const extra = (flags & EXTRA) !== 0;
  const from = FIXED + (extra ? 2 + (bytes[FIXED] ?? 0) + 256 * (bytes[FIXED + 1] ?? 0) : 0);
  const parts = new TextDecoder('latin1').decode(bytes.subarray(from, from + LONGEST)).split('\0');
  return { extra, words: parts.slice(0, [NAME, COMMENT].filter((bit) => (flags & bit) !== 0).length) };
}

/**
 * Whether the head of a gzip file holds more than its own name, which nobody reads and which would go out with it. `file`: path of the file
 * as it lies.
 */
export function saysMore(bytes: Uint8Array, file: string): boolean {
  const { extra, words } = labelOf(bytes);
  const own = file.slice(file.lastIndexOf('/') + 1);
  return extra || words.some((each) => each !== own && `${each}.gz` !== own);
}
