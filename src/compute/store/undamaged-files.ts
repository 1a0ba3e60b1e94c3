/**
 * Which files of the cache were found undamaged, and how they looked then: a file whose size, inode and time of writing are still the
 * same is not read again only to be digested. The way of git's index, its guard against a change within one tick of the clock included
 * ("racy git" in its technical documentation). A damage that leaves no such trace is found when the
 * bytes are read: every reader holds them to their digest. A lost or damaged list costs time and never correctness.
 */
import { readFileSync, statSync } from 'node:fs';

export interface UndamagedFiles {
  /** Whether a file is undamaged: as it was when `check` found it so in an earlier process, else as `check` finds it now. */
  undamaged(name: string, path: string, check: () => boolean): boolean;
  /** Takes all other names off the list. */
  keepOnly(names: ReadonlySet<string>): void;
  /** The list to be written in the place of the one that was read; undefined where that one serves as well. */
  listed(): string | undefined;
}

/** The list in a file, which need not be there. */
export function openUndamaged(file: string): UndamagedFiles {
  const { looks, since } = stored(file);
  const now = new Map(looks);
  return {
    undamaged(name, path, check) {
      const look = lookOf(path);
      if (look !== undefined && looks.get(name) === look && writtenAt(look) < since) return true;
      const whole = check();
      if (whole && look !== undefined) now.set(name, look);
      else now.delete(name);
      return whole;
    },
    keepOnly(names) {
      for (const name of [...now.keys()]) if (!names.has(name)) now.delete(name);
    },
    listed() {
      const serves =
        now.size === looks.size && [...now].every(([name, look]) => looks.get(name) === look && writtenAt(look) < since);
      return serves ? undefined : JSON.stringify([...now]);
    },
  };
}

/** Time of the last writing, size, inode; undefined where there is no file. */
function lookOf(path: string): string | undefined {
  const stat = statSync(path, { bigint: true, throwIfNoEntry: false });
  return stat === undefined ? undefined : [stat.mtimeNs, stat.size, stat.ino].join(' ');
}

function writtenAt(look: string): bigint {
  return BigInt(look.slice(0, look.indexOf(' ')));
}

/** What stands on the list, and when it was written: what was written no earlier is not trusted. */
function stored(file: string): { looks: ReadonlyMap<string, string>; since: bigint } {
  try {
    const looks = new Map(JSON.parse(readFileSync(file, 'utf8')) as [string, string][]);
    return { looks, since: statSync(file, { bigint: true }).mtimeNs };
  } catch {
    return { looks: new Map(), since: 0n };
  }
}
