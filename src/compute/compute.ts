/** The front door of stage 1: where nothing that it reads has changed, the last manifest stands; else the chain runs. */

import type { Progress } from './chain.ts';
import { contentDigest, isCurrent, readManifest } from './project/manifest.ts';
import { mending } from './project/mending.ts';
import { dataFiles, readProject } from './project/read-project.ts';
import type { Manifest, Scope } from './results.ts';
import { codeDigests } from './store/code.ts';
import { openStore } from './store/store.ts';

/** Runs stage 1 on a project folder. Throws only on faults of the disk; what is wrong with the author's files is in `problems`. */
export function compute(root: string, scope: Scope, progress?: Progress): Promise<Manifest> {
  return mending(root, () => computeOnce(root, scope, progress));
}

async function computeOnce(root: string, scope: Scope, progress?: Progress): Promise<Manifest> {
  const code = codeDigests();
  const store = openStore(root);
  const project = readProject(root);
  const content = contentDigest(project);
  const last = readManifest(root, scope);
  try {
    if (last !== undefined && isCurrent(last, { code: code.all, content, root, data: dataFiles(root), store })) return last;
    // Loaded only where there is work to do: an unchanged build does without Markdown, YAML, units and the rest.
    const { chain } = await import('./chain.ts');
    return await chain({ root, scope, code, store, project, content, ...(progress && { progress }) });
  } finally {
    store.remember();
  }
}
