/** What stage 1 makes of the demonstration's logs, made once for all tests of a run that compute it in folders of their own. */
import { mkdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { inject } from 'vitest';

/** Gives a project folder without a cache the one that others have too: each result is kept under the digest of what it was made from. */
export function shareResults(root: string): void {
  const shared = join(inject('scratch'), 'shared-results');
  mkdirSync(shared, { recursive: true });
  symlinkSync(shared, join(root, '.cache'), 'dir');
}
