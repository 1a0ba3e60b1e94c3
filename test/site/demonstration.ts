/**
 * The demonstration, built once for all files of this project: most tests begin with a copy of it, its cache included. Only where an
 * empty cache is the point does a test build from nothing.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { copySources, type Ran, runCommand } from './project.ts';

export interface Demonstration {
  readonly root: string;
  /** What the build that made it said. */
  readonly built: Ran;
}

declare module 'vitest' {
  interface ProvidedContext {
    readonly demonstration: Demonstration;
  }
}

/** Far from where this project stands, in another zone and locale than the tests run in: that none of these shows is tested by another build. */
export default function setup(project: TestProject): () => void {
  const root = mkdtempSync(join(tmpdir(), 'soakproof-demonstration-'));
  copySources(root);
  project.provide('demonstration', { root, built: runCommand(root, 'build', { TZ: 'Asia/Kathmandu', LC_ALL: 'C' }) });
  return () => rmSync(root, { recursive: true, force: true });
}
