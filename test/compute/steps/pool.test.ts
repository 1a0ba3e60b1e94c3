import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { openPool } from '../../../src/compute/steps/pool.ts';
import { shareTask } from '../../../src/compute/steps/shares/share-task.ts';
import { openStore } from '../../../src/compute/store/store.ts';

let root: string;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-pool-'));
});
afterEach(() => rmSync(root, { recursive: true }));

test('a task that comes after the pool was closed is refused, since nobody would answer', async () => {
  const pool = openPool(root);
  await pool.close();
  const task = shareTask('code', { title: '', foot: { of: '', address: '' }, svg: 'none' });
  await expect(pool.run(openStore(root), task)).rejects.toThrow('a task of the kind share for a pool that is closed');
});
