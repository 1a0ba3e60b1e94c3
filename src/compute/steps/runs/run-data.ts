/** What goes out of a run's log: the file itself or its redaction, and the cleaned readings; made where the log is read. */
import { cleanedCsv } from '../../../intake/cleaned.ts';
import type { Log } from '../../../intake/log.ts';
import { checkRedacted, nothingTaken } from '../../../intake/redacted.ts';
import type { Unread } from '../../../intake/rows/unread.ts';
import type { LogBytes } from '../../../intake/sheet/log-bytes.ts';
import type { Problem } from '../../../problem.ts';
import type { RunLog } from '../../../register/register.ts';
import { digest } from '../../store/digest.ts';
import { changed } from '../../store/momentary-problems.ts';
import type { Store } from '../../store/store.ts';
import { type SharedAs, sharedAsOf } from './log-sharing.ts';
import type { RunTask } from './run-step.ts';
import { bytesOf } from './run-tables.ts';

/** Bytes in the store, under their digest. */
export interface Stored {
  readonly sha256: string;
  readonly bytes: number;
}

export interface LogData {
  /** '' where it is the run's only log. */
  readonly name: string;
  readonly sharedAs: SharedAs;
  /** Said of one that is too long to go out with a site. */
  readonly tooLong?: true;
  readonly unread: Unread;
  /** The log; in the store only where it goes out as it came. */
  readonly log: Stored;
  readonly redacted: (Stored & { readonly file: string }) | null;
  /** Null where only the digest goes out. */
  readonly cleaned: Stored | null;
}

interface Read {
  readonly run: RunLog;
  readonly bytes: LogBytes;
  readonly size: number;
  readonly sha256: string;
  /** Before any correction. */
  readonly log: Log;
  readonly unread: Unread;
}

/** Stores what goes out, and holds a redacted log against the log. */
export function keepLogData(root: string, store: Store, task: RunTask, { run, bytes, size, sha256, log, unread }: Read) {
  const { sharing } = run;
  const tooLong = !(bytes instanceof Uint8Array);
  const sharedAs = sharedAsOf(sharing, unread, tooLong);
  const problems: Problem[] = [];
  if (sharedAs === 'as it came' && bytes instanceof Uint8Array) store.keep(bytes);
  const own = { sha256, bytes: size };
  const redacted = redactedOf(root, store, task, run, log, problems);
  const cleaned = sharing.share === 'digest only' ? null : stored(store, cleanedCsv(log));
  return {
    data: { name: run.name, sharedAs, ...(tooLong ? { tooLong } : {}), unread, log: own, redacted, cleaned } satisfies LogData,
    problems,
  };
}

/** The same readings from either file, or a problem that says where they differ. */
function redactedOf(
  root: string,
  store: Store,
  { digests }: RunTask,
  { sharing, declaration }: RunLog,
  log: Log,
  problems: Problem[],
): LogData['redacted'] {
  const named = sharing.redacted;
  const bytes = named && bytesOf(root, named, 'redacted log', problems);
  if (named === undefined || bytes === undefined) return null;
  const file = `data/${named.file}`;
  const redaction = { file, bytes, place: named.place };
  const sha256 = digest(bytes);
  if (sha256 !== digests[named.file]) problems.push(changed(file, named.place));
  else if (sha256 === digests[declaration.file]) problems.push(nothingTaken(redaction));
  else problems.push(...checkRedacted(redaction, declaration, log));
  return { file: named.file, ...stored(store, bytes) };
}

function stored(store: Store, content: string | Uint8Array): Stored {
  const bytes = typeof content === 'string' ? Buffer.from(content) : content;
  return { sha256: store.keep(bytes), bytes: bytes.length };
}
