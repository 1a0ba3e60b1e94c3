/** Bytes in pieces -> parts that end with a line, so that a file of any length is read with the memory of one part. */

/** A line that is longer than a part: no log has one. */
export class LineTooLong extends Error {}

/** The bytes of all pieces in their order, in parts of at least `size` bytes that end with a line end; the last ends as the file does. */
export function* partsOf(pieces: Iterable<Uint8Array>, size: number): Generator<Uint8Array> {
  let held: Uint8Array[] = [];
  let length = 0;
  for (const piece of slices(pieces, size)) {
    held.push(piece);
    length += piece.length;
    if (length < size) continue;
    const whole = joined(held, length);
    const end = whole.lastIndexOf(10) + 1;
    if (end === 0 && length > 2 * size) throw new LineTooLong();
    if (end > 0) yield whole.subarray(0, end);
    held = end < length ? [whole.slice(end)] : [];
    length -= end;
  }
  if (length > 0) yield joined(held, length);
}

/** The same bytes in pieces of `size` bytes at most. */
function* slices(pieces: Iterable<Uint8Array>, size: number): Generator<Uint8Array> {
  for (const piece of pieces) for (let from = 0; from < piece.length; from += size) yield piece.subarray(from, from + size);
}

/** Several arrays as one. */
export function joined(pieces: readonly Uint8Array[], length = pieces.reduce((sum, piece) => sum + piece.length, 0)): Uint8Array {
  if (pieces.length === 1) return pieces[0]!;
  const whole = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

/** Offset at which a 1-based line begins; the length where there are fewer lines. */
export function lineOffset(bytes: Uint8Array, line: number): number {
  let at = 0;
  for (let k = 1; k < line; k++) {
    const end = bytes.indexOf(10, at);
    if (end < 0) return bytes.length;
    at = end + 1;
  }
  return at;
}

/** Number of lines; a line end after the last does not start another. */
export function lineCount(bytes: Uint8Array): number {
  let count = 0;
  for (let at = bytes.indexOf(10); at >= 0; at = bytes.indexOf(10, at + 1)) count++;
  return bytes.length === 0 || bytes.at(-1) === 10 ? count : count + 1;
}
