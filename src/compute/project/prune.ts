/** Keeps the cache as small as what the last runs of stage 1 used. */

import { openStore } from '../store/store.ts';
import { readManifest } from './manifest.ts';

/** Removes what neither the last build nor the last dev session used. */
export function prune(root: string): void {
  const manifests = [readManifest(root, 'site'), readManifest(root, 'all')].filter((manifest) => manifest !== undefined);
  const entries = new Set(manifests.flatMap(({ entries }) => entries));
  const blobs = new Set(manifests.flatMap(({ blobs }) => blobs));
  openStore(root).prune(entries, blobs);
}
