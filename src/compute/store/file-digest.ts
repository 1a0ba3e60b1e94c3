/** SHA-256 of files of any size, a piece at a time: none is ever in memory whole. */
import { createHash } from 'node:crypto';
import { closeSync, openSync, readSync } from 'node:fs';

/** Bytes that are read at once. */
const PIECE = 2 ** 18;

/** SHA-256 of a file, in hexadecimal. Throws where it cannot be read. */
export function fileDigest(path: string): string {
  const hash = createHash('sha256');
  const piece = Buffer.allocUnsafe(PIECE);
  const file = openSync(path, 'r');
  try {
    for (;;) {
      const length = readSync(file, piece, 0, PIECE, null);
      if (length === 0) return hash.digest('hex');
      hash.update(piece.subarray(0, length));
    }
  } finally {
    closeSync(file);
  }
}
