/**
 * Digests of large files outside of the store, and how the files looked when they were read: one whose size, inode and times of writing and
 * change still are the same is not read again. Unlike the time of writing, the time of change (`st_ctime`, POSIX.1-2024, stat) cannot be set by
 * a program, so a file that was written since is seen whatever its times were set to. A bad disk that gives back other bytes is not; small
 * files are read each time, and so are those of disks that keep no time of change. A lost or damaged list costs time and never correctness.
 */
import { type BigIntStats, readFileSync, statSync } from 'node:fs';
import { fileDigest } from './file-digest.ts';

/** In bytes: to read less takes hardly longer than to look at it. */
const LARGE = 2 ** 18;
/**
 * In ns. Where there is no time of change (FAT, exFAT, a folder of another machine over SFTP), systems show the time of writing in its place,
 * which a program can set. Such times count in steps of 10 ms at the finest (exFAT specification, 7.4); others hit one by chance, once in thousands.
 */
const COARSE = 10_000_000n;

export interface KnownDigests {
  /** The digest of a file: the known one where it looks as it did, else of its bytes. Throws where it cannot be read. */
  of(name: string, path: string): string;
  /** Of its bytes in any case. */
  read(name: string, path: string): string;
  /** The list to be written in the place of the one that was read, of the files that were asked for; undefined where that one serves as well. */
  listed(): string | undefined;
}

interface Known {
  readonly look: string;
  readonly digest: string;
}

/** The list in a file, which need not be there. */
export function openKnown(file: string): KnownDigests {
  const { known, since } = stored(file);
  const asked = new Map<string, Known>();
  const read = (name: string, path: string, look = lookAt(path)): string => {
    const digest = fileDigest(path);
    if (look !== null) asked.set(name, { look, digest });
    return digest;
  };
  return {
    of(name, path) {
      const look = lookAt(path);
      const before = known.get(name);
      if (look === null || before?.look !== look || changedAt(look) >= since) return read(name, path, look);
      asked.set(name, before);
      return before.digest;
    },
    read: (name, path) => read(name, path),
    listed() {
      const same = ([name, { look, digest }]: [string, Known]) =>
        known.get(name)?.look === look && known.get(name)?.digest === digest && changedAt(look) < since;
      return asked.size === known.size && [...asked].every(same) ? undefined : JSON.stringify([...asked]);
    },
  };
}

/** Throws where there is no file. */
function lookAt(path: string): string | null {
  return lookOf(statSync(path, { bigint: true }));
}

/** Time of the last change, of the last writing, size, inode; null of a file that is small, or whose disk keeps no time of change. */
export function lookOf({ ctimeNs, mtimeNs, size, ino }: Pick<BigIntStats, 'ctimeNs' | 'mtimeNs' | 'size' | 'ino'>): string | null {
  return size < LARGE || ctimeNs % COARSE === 0n ? null : [ctimeNs, mtimeNs, size, ino].join(' ');
}

function changedAt(look: string): bigint {
  return BigInt(look.slice(0, look.indexOf(' ')));
}

/** What stands on the list, and when it was written: what changed no earlier is not trusted. */
function stored(file: string): { known: ReadonlyMap<string, Known>; since: bigint } {
  try {
    const known = new Map(JSON.parse(readFileSync(file, 'utf8')) as [string, Known][]);
    return { known, since: statSync(file, { bigint: true }).mtimeNs };
  } catch {
    return { known: new Map(), since: 0n };
  }
}
