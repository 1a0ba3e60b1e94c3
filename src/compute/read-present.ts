/** Runs stage 1 and gives what it knows of every note and script as it would go out now. */

import { compute } from './compute.ts';
import { contentDigest } from './project/manifest.ts';
import { mending } from './project/mending.ts';
import { readProject } from './project/read-project.ts';
import type { PresentNote } from './published-state/protect.ts';
import type { Manifest } from './results.ts';
import { codeDigests } from './store/code.ts';
import { openStore } from './store/store.ts';

export interface Present {
  readonly manifest: Manifest;
  readonly notes: readonly PresentNote[];
}

/** Throws only on faults of the disk, as `compute` does. */
export function readPresent(root: string): Promise<Present> {
  return mending(root, async () => presentOf(root, await compute(root, 'site')));
}

/** The same where one file of the project had another text, which is not written. */
export async function readPresentWith(root: string, file: string, text: string): Promise<Present> {
  const read = readProject(root);
  const project = { ...read, content: read.content.map((each) => (each.path === file ? { ...each, text } : each)) };
  const { chain } = await import('./chain.ts');
  // Its manifest names other content than the disk has, and so does not stand when the next command looks.
  const ground = {
    root,
    scope: 'site',
    code: codeDigests(),
    store: openStore(root),
    project,
    content: contentDigest(project),
  } as const;
  return mending(root, async () => presentOf(root, await chain(ground)));
}

function presentOf(root: string, manifest: Manifest): Present {
  const bytes = openStore(root).bytes(manifest.present);
  return { manifest, notes: JSON.parse(new TextDecoder().decode(bytes)) as PresentNote[] };
}
