/** Front door of intake: the bytes of a log -> a Log. */
import type { LogDeclaration } from './log.ts';
import { readLong } from './long-log.ts';
import { isLabelled, isWhole, type LogBytes } from './sheet/log-bytes.ts';
import { type ReadLog, readWhole } from './whole-log.ts';

export type { ReadLog } from './whole-log.ts';

/**
 * bytes -> text (decode) -> records and structure (open) -> rows -> one time axis -> channels in canonical units. A log of more bytes than are
 * read at once is read in parts, each like a log of its own.
 *
 * @param file - project path (`data/…`), for problems about cells and rows; problems of the declaration stand at its own places.
 * Never throws; problems come in the order of files and lines. A declared channel that cannot be read is an error and leaves no log: figures without it would be of another run.
 */
export function read(bytes: LogBytes, declaration: LogDeclaration, file: string): ReadLog {
  const result = isWhole(bytes) ? readWhole(bytes, declaration, file) : readLong(bytes, declaration, file);
  const { unread } = result;
  return unread !== null && isLabelled(bytes, file) ? { ...result, unread: { ...unread, cells: unread.cells + 1 } } : result;
}
