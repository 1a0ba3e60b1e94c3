/** One temporary folder for all that a run of the tests writes; it goes when the last test has ended. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** Path of the temporary folder of this run of the tests. */
    readonly scratch: string;
  }
}

export default function setup(project: TestProject): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'soakproof-tests-'));
  project.provide('scratch', folder);
  return () => rmSync(folder, { recursive: true, force: true });
}
