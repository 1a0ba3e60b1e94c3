/** What stopped a command, as plain sentences: what happened, and what to do. Nobody but us is helped by a stack of calls. */
import { TOO_LARGE } from '../compute/archive/zip-limits.ts';
import { isDamage, systemFault } from '../compute/store/damage.ts';
import { visible } from '../hidden-characters.ts';

/** An error whose message says all that the author needs. */
export class Refusal extends Error {}

/** The sentences for anything that was thrown. */
export function failureText(thrown: unknown): string {
  return visible(sentencesOf(thrown));
}

function sentencesOf(thrown: unknown): string {
  const message = thrown instanceof Error ? thrown.message : String(thrown);
  if (thrown instanceof Refusal) return `${message}.`;
  if (isDamage(thrown))
    return `The disk gives back other bytes than were written (${message}). Remove .cache/ and run the command again; if this comes back, have the disk checked.`;
  const code = systemFault(thrown);
  if (code !== undefined) return `${ofSystem(code, /'([^']+)'/.exec(message)?.[1])} (${code})`;
  if (/heap out of memory|memory limit|Invalid string length|ERR_STRING_TOO_LONG/.test(message))
    return `There is not enough memory for files as large as these (${message}). Log less often, or split the largest log into several runs.`;
  if (message === TOO_LARGE)
    return `The archive of a note would be larger than a zip can be (4 GiB). Share less of its logs (\`share: cleaned only\`), or divide the note.`;
  return `Soakproof itself failed: ${message}${placeOf(thrown)}. This is a fault of the program: please report it with the files that it read.`;
}

function ofSystem(code: string, path: string | undefined): string {
  const file = path ?? 'A file of the project';
  switch (code) {
    case 'ENOSPC':
    case 'EDQUOT':
    case 'EFBIG':
      return 'The disk is full: free some space, then run the command again.';
    case 'EROFS':
    case 'EACCES':
    case 'EPERM':
      return `${file} may not be opened or changed: give yourself the right to write to the project folder, .cache/ and dist/ included, then run the command again.`;
    case 'EMFILE':
    case 'ENFILE':
      return 'Too many files are open on this machine: close other programs, then run the command again.';
    case 'ENOMEM':
      return 'This machine is out of memory: close other programs, then run the command again.';
    case 'EBUSY':
    case 'EXDEV':
      return `${file} is in use by another program, or is a disk of its own, and so cannot be replaced: stop that program, or let dist/ be a plain folder of the project, then run the command again.`;
    default:
      return `The disk failed at ${file}: have the disk checked, then run the command again.`;
  }
}

/** Where in our own code it happened, for a report. */
function placeOf(thrown: unknown): string {
  const frame = thrown instanceof Error ? /\/(src\/[^\s()]+:\d+:\d+)/.exec(thrown.stack ?? '') : null;
  return frame === null ? '' : ` (at ${frame[1]})`;
}
