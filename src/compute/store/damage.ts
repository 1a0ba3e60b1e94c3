/**
 * What the disk does to a command: stored bytes that do not come back as they were, and faults of the system. Both are told by the
 * beginning of a message, since worker threads and Astro hand on no more of an error.
 */

const DAMAGED = 'the cache is damaged: ';

/** Full; refused; failing; too much at once. */
const SYSTEM = /\b(ENOSPC|EDQUOT|EFBIG|EROFS|EACCES|EPERM|EIO|EMFILE|ENFILE|ENOMEM|EBUSY|EXDEV)\b: /;

/** An error that says which stored bytes are missing or changed. What was stored can be made anew. */
export function damaged(what: string): Error {
  return new Error(`${DAMAGED}${what} is not as it was stored`);
}

/** Whether an error, or what it was caused by, tells of such damage. */
export function isDamage(thrown: unknown): boolean {
  return messagesOf(thrown).some((message) => message.includes(DAMAGED));
}

/** The system's name for a fault of the disk, such as ENOSPC; undefined for any other error. */
export function systemFault(thrown: unknown): string | undefined {
  return messagesOf(thrown)
    .map((message) => SYSTEM.exec(message)?.[1] ?? (NO_FOLDER.test(message) ? 'EROFS' : undefined))
    .find((code) => code !== undefined);
}

/** What Node says of a folder that it is to make with all above it, on a disk that may only be read. */
const NO_FOLDER = /^ENOENT: no such file or directory, mkdir /;

function messagesOf(thrown: unknown): string[] {
  if (!(thrown instanceof Error)) return [String(thrown)];
  return [thrown.message, ...(thrown.cause === undefined ? [] : messagesOf(thrown.cause))];
}
