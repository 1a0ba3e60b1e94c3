import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { expect, inject, it } from 'vitest';

const PROJECT = join(import.meta.dirname, '..', '..');

/** What is said before a script of npm, in a clone whose lock file is gone. */
function ready(withPackages: boolean) {
  const root = mkdtempSync(join(inject('scratch'), 'ready-'));
  const script = join(root, 'src', 'commands', 'ready.mjs');
  mkdirSync(join(root, 'src', 'commands'), { recursive: true });
  cpSync(join(PROJECT, 'src', 'commands', 'ready.mjs'), script);
  if (withPackages) symlinkSync(join(PROJECT, 'node_modules'), join(root, 'node_modules'), 'dir');
  const { status, stdout, stderr } = spawnSync(process.execPath, [script], { encoding: 'utf8' });
  return { code: status, out: stdout, err: stderr };
}

it('commands/ready goes on with the packages that are there where the lock file is gone', () => {
  expect(ready(true)).toEqual({ code: 0, out: '', err: '' });
});

it('commands/ready says how to get the lock file back where nothing is installed', () => {
  expect(ready(false)).toEqual({
    code: 1,
    out: '',
    err: 'There is no package-lock.json, which says what to install. Bring it back with `git restore package-lock.json`, then run the same command again.\n',
  });
});
