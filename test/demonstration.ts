/**
 * The demonstration, built once for all tests of whole stages and sites: most begin with it or with a copy, its cache included. Only where
 * an empty cache is the point does a test build from nothing. The build itself begins with the cache of this folder, where `npm run build`
 * left one; a test compares what it gives with a build from nothing.
 */
import { existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { elsewhereText } from './demonstration-folder.ts';
import { copyFolder, copySources, HERE, type Ran, runCommand } from './site/project.ts';

export interface Demonstration {
  /** Its folder, which no test writes to. */
  readonly root: string;
  /** What the build said that made it. */
  readonly built: Ran;
}

declare module 'vitest' {
  interface ProvidedContext {
    readonly demonstration: Demonstration;
  }
}

/** Each of Vitest's projects loads this file for itself. */
const shared = globalThis as { soakproofDemonstration?: Demonstration };

export default function setup(project: TestProject): () => void {
  if (shared.soakproofDemonstration === undefined) process.stderr.write(elsewhereText());
  shared.soakproofDemonstration ??= build();
  const { root } = shared.soakproofDemonstration;
  project.provide('demonstration', shared.soakproofDemonstration);
  return () => rmSync(dirname(root), { recursive: true, force: true });
}

/** In another zone and locale than other builds of the tests, which have to give the same bytes. */
function build(): Demonstration {
  // Two folders deep, as its copies are: what Node has compiled is found again by relative paths.
  const root = join(mkdtempSync(join(tmpdir(), 'soakproof-demonstration-')), 'demonstration');
  mkdirSync(root);
  copySources(root);
  if (existsSync(join(HERE, '.cache'))) copyFolder(HERE, root, '.cache');
  return { root, built: runCommand(root, 'build', { TZ: 'Asia/Kathmandu', LC_ALL: 'C' }) };
}
