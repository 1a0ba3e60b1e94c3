/** Files below data/ as bytes; long logs a piece at a time. */
import { constants } from 'node:buffer';
import { closeSync, openSync, readFileSync, readSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { type LogBytes, READ_AT_ONCE } from '../../intake/sheet/log-bytes.ts';
import { error, type Place, type Problem } from '../../problem.ts';
import { fileDigest } from '../store/file-digest.ts';
import type { Store } from '../store/store.ts';
import { readingProgress } from './reading-progress.ts';

/** Text of a table is one string, and no string is longer. */
const LARGEST = constants.MAX_STRING_LENGTH;

/** The bytes of a file; or, where it cannot be read, a problem at `place`. `what` names the file in words. */
export function readData(root: string, file: string, what: string, place: Place): Uint8Array | Problem {
  return opened(root, file, what, place, (path, size, refused) => {
    if (size <= LARGEST) return readFileSync(path);
    const [has, most] = [size, LARGEST].map((bytes) => Math.floor(bytes / 2 ** 20));
    return refused(`has ${has} MiB, and ${most} MiB is the most that can be read`, 'split it');
  });
}

/** The bytes of a log, of any size: at once, or what reads a long one a piece at a time. Told on the terminal where that takes longer than a second. */
export function readLogBytes(root: string, file: string, place: Place): LogBytes | Problem {
  return opened(root, file, 'log', place, (path, size) => {
    if (size <= READ_AT_ONCE) return readFileSync(path);
    closeSync(openSync(path, 'r'));
    return () => piecesOfFile(path, readingProgress(`data/${file}`, size));
  });
}

function opened<T>(
  root: string,
  file: string,
  what: string,
  place: Place,
  read: (path: string, size: number, refused: (found: string, remedy: string) => Problem) => T | Problem,
): T | Problem {
  const path = join(root, 'data', file);
  const refused = (found: string, remedy: string) =>
    error('unreadable-file', place, `the ${what} data/${file} ${found}`, { remedy });
  try {
    return read(path, statSync(path).size, refused);
  } catch (thrown) {
    const { code = 'unknown reason' } = thrown as NodeJS.ErrnoException;
    return refused(`cannot be read (${code})`, 'check the path and its permissions');
  }
}

/** Bytes that are read from a long file at once. */
const PIECE = 2 ** 20;

function* piecesOfFile(path: string, tell: (done: number) => void = () => {}): Generator<Uint8Array> {
  const file = openSync(path, 'r');
  try {
    for (let done = 0; ; ) {
      const piece = new Uint8Array(PIECE);
      const length = readSync(file, piece, 0, PIECE, null);
      if (length === 0) return;
      done += length;
      tell(done);
      yield piece.subarray(0, length);
    }
  } finally {
    closeSync(file);
  }
}

/** SHA-256 of a file's bytes as they are now; '' where it cannot be read. */
export function digestNow(root: string, file: string): string {
  return orNone(() => fileDigest(join(root, 'data', file)));
}

/** The same, of a large file that looks as it did from an earlier build. */
export function digestOfData(root: string, store: Store, file: string): string {
  return orNone(() => store.fileDigest(join(root, 'data', file)));
}

function orNone(digest: () => string): string {
  try {
    return digest();
  } catch {
    return '';
  }
}

/** Size of a file that was read. */
export function sizeOfData(root: string, file: string): number {
  return statSync(join(root, 'data', file)).size;
}
