/** The manifest on disk, and whether it still stands: whether all that it was made from is as it was. */
import { join } from 'node:path';
import type { DataFiles } from '../../register/register.ts';
import { type Inputs, MANIFEST_FORMAT, type Manifest, type Scope } from '../results.ts';
import { digestOf } from '../store/digest.ts';
import { isMomentary } from '../store/momentary-problems.ts';
import { readSealed, writeSealed } from '../store/sealed-text.ts';
import type { Store } from '../store/store.ts';
import { digestOfData } from './read-data.ts';
import type { Project } from './read-project.ts';

/** Path of a scope's manifest below a project folder. */
export function manifestPath(root: string, scope: Scope): string {
  return join(root, '.cache', `manifest-${scope}.json`);
}

/** The stored manifest of a scope; undefined where there is none that can be read. */
export function readManifest(root: string, scope: Scope): Manifest | undefined {
  const text = readSealed(manifestPath(root, scope));
  if (text === undefined) return undefined;
  const manifest = JSON.parse(text) as Partial<Manifest>;
  return manifest.format === MANIFEST_FORMAT ? (manifest as Manifest) : undefined;
}

/** Writes a manifest behind its own digest, whole or not at all. */
export function writeManifest(root: string, manifest: Manifest): void {
  writeSealed(manifestPath(root, manifest.scope), JSON.stringify(manifest));
}

export function contentDigest(project: Project): string {
  return digestOf([project.content, project.published, project.copies, project.archives, project.config, project.problems]);
}

/** Whether inputs, pages and files of a stored manifest are still what they were. */
export function isCurrent(
  manifest: Manifest,
  now: { code: string; content: string; root: string; data: DataFiles; store: Store },
): boolean {
  const { inputs } = manifest;
  return (
    inputs.code === now.code &&
    !manifest.problems.some(isMomentary) &&
    inputs.content === now.content &&
    inputs.data.every((looked) => now.data.kind(looked.path) === looked.kind && sameLog(now.root, now.store, looked)) &&
    manifest.blobs.every((blob) => now.store.has(blob))
  );
}

function sameLog(root: string, store: Store, { path, sha256 }: Inputs['data'][number]): boolean {
  return sha256 === undefined || digestOfData(root, store, path) === sha256;
}

/** Looks up like `data`, and remembers what was asked and answered. */
export function recordingLookups(data: DataFiles): { data: DataFiles; looked: Map<string, string> } {
  const looked = new Map<string, string>();
  return {
    looked,
    data: {
      kind(path) {
        const kind = data.kind(path);
        looked.set(path, kind);
        return kind;
      },
    },
  };
}
