/** Every picture that a note or script shows, each file once and one after the other, so that no two are decoded in memory at once. */
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { PictureFault } from '../../../pictures/judge.ts';
import { LIMITS } from '../../../pictures/settings.ts';
import { error, type Problem } from '../../../problem.ts';
import type { DataFiles } from '../../../register/register.ts';
import type { PictureRequest } from '../../../words/written.ts';
import { digest, digestOf } from '../../store/digest.ts';
import { memoAsync, stored } from '../../store/memo.ts';
import { changed, fault } from '../../store/momentary-problems.ts';
import type { Store } from '../../store/store.ts';
import type { Notes } from '../notes/notes.ts';
import type { PictureFiles } from './picture-step.ts';

/** A picture that can be shown. */
export interface Picture extends PictureFiles {
  /** SHA-256 of its author's file. */
  readonly sha256: string;
}

export interface Pictures {
  /** By path below data/; one that could not be made is left out, and a problem says why. */
  readonly made: ReadonlyMap<string, Picture>;
  /** SHA-256 by path below data/; '' where it could not be read. */
  readonly files: ReadonlyMap<string, string>;
  readonly problems: readonly Problem[];
}

/** Of a picture that came out of an archive: the digest of the original, which its author has, and of the file that was published. */
export interface ArchivedPicture {
  readonly original: string;
  readonly published: string;
}

interface Options {
  readonly root: string;
  readonly store: Store;
  readonly code: string;
  readonly data: DataFiles;
  readonly notes: Pick<Notes, 'outcomes'>;
  /** By path below data/. */
  readonly archived: ReadonlyMap<string, ArchivedPicture>;
  /** Told before each picture that takes time. */
  readonly progress?: (done: number, of: number) => void;
}

/** Makes what is not in the store yet. */
export async function computePictures(options: Options): Promise<Pictures> {
  const requests = options.notes.outcomes.flatMap(({ written }) => written.pictures ?? []).filter(({ path }) => path !== '');
  const byPath = Map.groupBy(requests, ({ path }) => path);
  const [made, files, problems] = [new Map<string, Picture>(), new Map<string, string>(), [] as Problem[]];
  let done = 0;
  for (const [path, asked] of byPath) {
    try {
      const picture = await pictureAt(options, path, files, () => options.progress?.(done, byPath.size));
      if (picture === 'changed') problems.push(...asked.map(({ place }) => changed(`data/${path}`, place)));
      else if ('found' in picture) problems.push(...asked.map((request) => told(request, picture)));
      else made.set(path, picture);
    } catch (thrown) {
      problems.push(...asked.map(({ place }) => fault(place, `the picture data/${path} could not be made`, thrown)));
    }
    done += 1;
  }
  return { made, files, problems };
}

interface Unreadable {
  readonly rule: 'unreadable-file';
  readonly found: string;
  readonly remedy: string;
}

function told({ path, place }: PictureRequest, { rule, found, remedy, ...more }: PictureFault | Unreadable): Problem {
  return error(rule, place, `the picture data/${path} ${found}`, { ...more, remedy });
}

async function pictureAt(
  { root, store, code, data, archived }: Options,
  path: string,
  files: Map<string, string>,
  begin: () => void,
): Promise<Picture | PictureFault | Unreadable | 'changed'> {
  const own = digestAt(root, store, data, path);
  if (typeof own === 'object') {
    files.set(path, '');
    return own;
  }
  files.set(path, own);
  const origin = archived.get(path);
  const finished = origin?.published === own;
  const key = digestOf(['picture', code, path.slice(path.lastIndexOf('.')), own, finished]);
  if (stored(store, key) === undefined) begin();
  const make = async (kept: Store) => {
    const bytes = readFileSync(join(root, 'data', path));
    if (digest(bytes) !== own) return 'changed';
    // sharp is loaded with the first picture that has to be made.
    return (await import('./picture-step.ts')).pictureStep(kept, path, bytes, finished);
  };
  const result = await memoAsync<PictureFiles | PictureFault | 'changed'>(store, key, make, (made) => made !== 'changed');
  if (result === 'changed' || 'rule' in result) return result;
  return { ...result, sha256: finished ? origin.original : own };
}

/** SHA-256 of a picture that can be read, or why it cannot. */
function digestAt(root: string, store: Store, data: DataFiles, path: string): string | PictureFault | Unreadable {
  const kind = data.kind(path);
  const unreadable = (found: string, remedy: string): Unreadable => ({ rule: 'unreadable-file', found, remedy });
  if (kind === 'outside') return unreadable('leads out of data/', 'put the file itself there');
  if (kind === 'folder') return unreadable('is a folder', 'name a file in it');
  if (kind === 'missing') return unreadable('does not exist, or is no ordinary file', 'check the path; capital letters count');
  try {
    const { size } = statSync(join(root, 'data', path));
    if (size <= LIMITS.bytes) return store.fileDigest(join(root, 'data', path));
    const most = `${LIMITS.bytes / 2 ** 20} MiB`;
    return {
      rule: 'picture-size',
      found: `has ${Math.ceil(size / 2 ** 20)} MiB`,
      expected: `${most} at most`,
      remedy: 'export it smaller',
    };
  } catch (thrown) {
    const { code = 'unknown reason' } = thrown as NodeJS.ErrnoException;
    return unreadable(`cannot be read (${code})`, 'check its permissions');
  }
}
