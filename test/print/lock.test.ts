import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { lock } from '../../src/print/lock.ts';

const LOCK = fileURLToPath(new URL('../../src/print/lock.ts', import.meta.url));

describe('print/lock', () => {
  it('is held once, and free again when closed', async () => {
    const root = mkdtempSync(join(tmpdir(), 'soakproof-lock-'));
    const held = await lock(root);
    expect(held).toBeDefined();
    expect(await lock(root)).toBeUndefined();
    await new Promise((resolve) => held!.close(resolve));
    const again = await lock(root);
    expect(again).toBeDefined();
    again!.close();
    rmSync(root, { recursive: true });
  });

  it('is free again when its process was killed', async () => {
    const root = mkdtempSync(join(tmpdir(), 'soakproof-lock-'));
    const script = `const { lock } = await import(${JSON.stringify(LOCK)}); (await lock(${JSON.stringify(root)})).ref(); console.log('held');`;
    const other = spawn(process.execPath, ['--input-type=module', '-e', script]);
    await new Promise((resolve) => other.stdout.once('data', resolve));
    expect(await lock(root)).toBeUndefined();
    other.kill('SIGKILL');
    await new Promise((resolve) => other.once('exit', resolve));
    const held = await lock(root);
    expect(held).toBeDefined();
    held!.close();
    rmSync(root, { recursive: true });
  });
});
