/** One picture of an author's → files in the store, or what is wrong with it. */

import type { PictureFault } from '../../../pictures/judge.ts';
import { KINDS } from '../../../pictures/kind.ts';
import { type MadeFile, makePicture } from '../../../pictures/make.ts';
import type { Store } from '../../store/store.ts';

/** A file of a picture, in the store. */
export interface PictureFile {
  readonly width: number;
  readonly height: number;
  /** Ending of its name. */
  readonly ending: string;
  readonly blob: string;
  readonly bytes: number;
}

export interface PictureFiles {
  readonly whole: PictureFile;
  /** WebP, narrowest first. */
  readonly widths: readonly PictureFile[];
  readonly fallback: PictureFile;
}

/** `finished`: the bytes came out of an archive, where they stand as they were published. */
export async function pictureStep(
  store: Store,
  path: string,
  bytes: Uint8Array,
  finished: boolean,
): Promise<PictureFiles | PictureFault> {
  const made = await makePicture(path, bytes, finished);
  if ('rule' in made) return made;
  const kept = ({ width, height, kind, bytes: content }: MadeFile): PictureFile => {
    return { width, height, ending: KINDS[kind].endings[0]!, blob: store.keep(content), bytes: content.length };
  };
  return { whole: kept(made.whole), widths: made.widths.map(kept), fallback: kept(made.fallback) };
}
