/** A folder of pictures that is always whole: a new one is written beside it and then takes its place. */
import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type Kernel, openKernel } from '../../print/exchange.ts';

export interface PictureFolder {
  /** Where pictures are found: `stills/<id>`. */
  readonly target: string;
  /** Where new ones are written. */
  readonly next: string;
  readonly last: string;
}

/** The folder of a script's pictures. What an earlier run left beside it is cleared away; one that was cut short between its two steps is undone. */
export function pictureFolder(root: string, id: string): PictureFolder {
  const folder = {
    target: join(root, 'stills', id),
    next: join(root, '.cache', `stills-next-${id}`),
    last: join(root, '.cache', `stills-last-${id}`),
  };
  mkdirSync(join(root, '.cache'), { recursive: true });
  mkdirSync(dirname(folder.target), { recursive: true });
  if (!existsSync(folder.target) && existsSync(folder.last)) renameSync(folder.last, folder.target);
  clear(folder);
  mkdirSync(folder.next);
  return folder;
}

/** Removes what stands beside the folder. */
export function clear({ next, last }: PictureFolder): void {
  rmSync(next, { recursive: true, force: true });
  rmSync(last, { recursive: true, force: true });
}

/** Puts the new pictures in the place of the old ones, in one step where the kernel can, else in two. */
export async function replace(folder: PictureFolder, kernel?: Kernel): Promise<void> {
  const { target, next, last } = folder;
  const { exchange } = kernel ?? (await openKernel());
  if (!existsSync(target)) renameSync(next, target);
  else if (!exchange(next, target)) {
    renameSync(target, last);
    try {
      renameSync(next, target);
    } catch (thrown) {
      renameSync(last, target);
      throw thrown;
    }
  }
  clear(folder);
}
