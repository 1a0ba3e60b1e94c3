/** What reads the cache is done once more where damage shows: the second time everything damaged is made anew. */
import { rmSync } from 'node:fs';
import { isDamage } from '../store/damage.ts';
import { listsOf } from '../store/store.ts';
import { manifestPath } from './manifest.ts';

/** Lets the next run of stage 1 look at every stored byte, in the place of what was remembered of them. */
function distrust(root: string): void {
  for (const path of [...listsOf(root), manifestPath(root, 'site'), manifestPath(root, 'all')]) rmSync(path, { force: true });
}

/** Does what reads the cache, and once more where damage shows. Throws where it shows again: the disk itself is then at fault. */
export async function mending<T>(root: string, task: () => Promise<T>): Promise<T> {
  try {
    return await task();
  } catch (thrown) {
    if (!isDamage(thrown)) throw thrown;
    distrust(root);
    return task();
  }
}
