/** Runs stage 1 and gives what it knows of every note and script as it would go out now. */
import { compute } from '../compute.ts';
import type { Manifest } from '../results.ts';
import { openStore } from '../store.ts';
import type { PresentNote } from './protect.ts';

export interface Present {
  readonly manifest: Manifest;
  readonly notes: readonly PresentNote[];
}

/** Throws only on faults of the disk, as `compute` does. */
export async function readPresent(root: string): Promise<Present> {
  const manifest = await compute(root, 'site');
  const bytes = openStore(root).bytes(manifest.present);
  if (bytes === undefined) throw new Error('the cache was damaged while it was read: run the command again');
  return { manifest, notes: JSON.parse(new TextDecoder().decode(bytes)) as PresentNote[] };
}
