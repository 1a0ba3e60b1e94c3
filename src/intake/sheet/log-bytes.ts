/** The bytes of a log: all at once, or a piece at a time where the file is long. */
import { saysMore } from './packed-label.ts';
import { LineTooLong, partsOf } from './parts.ts';
import { packedWith, UnpackFault, unpacked } from './unpack.ts';

/** The file's bytes; or what gives them in pieces, from the beginning each time that it is asked. */
export type LogBytes = Uint8Array | (() => Iterable<Uint8Array>);

/** Bytes of text that are read at once. A log with more is read in parts: its text as a string, and the index of its cells, take ten times as much. */
export const READ_AT_ONCE = 2 ** 26;

/** Whether a log is read at once. A packed one is unpacked to see. */
export function isWhole(bytes: LogBytes): bytes is Uint8Array {
  if (!(bytes instanceof Uint8Array)) return false;
  if (packedWith(bytes) !== 'gzip') return bytes.length <= READ_AT_ONCE;
  if (bytes.length * MOST_OF_ONE <= READ_AT_ONCE) return true;
  try {
    let length = 0;
    for (const piece of unpacked([bytes])) {
      length += piece.length;
      if (length > READ_AT_ONCE) return false;
    }
  } catch (thrown) {
    if (!(thrown instanceof UnpackFault)) throw thrown;
  }
  return true;
}

/** A packed byte yields at most so many (RFC 1951). */
const MOST_OF_ONE = 1032;

/** All pieces of a log, unpacked where they are packed. Throws an `UnpackFault` as they come. */
export function piecesOf(bytes: LogBytes): Iterable<Uint8Array> {
  return unpacked(bytes instanceof Uint8Array ? [bytes] : bytes());
}

/** Bytes of a part of a long log. */
export const PART = 2 ** 22;

/** What is looked at to see what a log is: all of it, or the first part of a long one. Nothing where a packed one yields nothing. */
export function lookedAt(bytes: LogBytes): Uint8Array {
  if (isWhole(bytes)) return bytes;
  try {
    for (const part of partsOf(piecesOf(bytes), PART)) return part;
  } catch (thrown) {
    if (!(thrown instanceof UnpackFault) && !(thrown instanceof LineTooLong)) throw thrown;
  }
  return new Uint8Array(0);
}

/** Whether a log is packed, with words in the head of its file that nobody reads. */
export function isLabelled(bytes: LogBytes, file: string): boolean {
  for (const piece of bytes instanceof Uint8Array ? [bytes] : bytes()) return packedWith(piece) === 'gzip' && saysMore(piece, file);
  return false;
}

/** Whether a log is packed. */
export function isPacked(bytes: LogBytes): boolean {
  for (const piece of bytes instanceof Uint8Array ? [bytes] : bytes()) return packedWith(piece) === 'gzip';
  return false;
}
