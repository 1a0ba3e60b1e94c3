import { spawn, spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, inject, it } from 'vitest';

const COMMANDS = join(import.meta.dirname, '..', '..', 'src', 'commands');
/** Has Node say that it is of another major. */
const OLDER = "data:text/javascript,Object.defineProperty(process,'versions',{value:{...process.versions,node:'20.0.0'}})";

/** A package whose one command, `new`, does what a line of code says. */
function packageIn(name: string, code: string): string {
  const root = join(mkdtempSync(join(inject('scratch'), 'front-')), name);
  const folder = join(root, 'src', 'commands');
  mkdirSync(folder, { recursive: true });
  for (const file of ['soakproof.mjs', 'list-commands.mjs']) cpSync(join(COMMANDS, file), join(folder, file));
  writeFileSync(join(root, 'package.json'), '{ "type": "module" }');
  writeFileSync(join(folder, 'new.js'), `// commandLine({ name: 'new', does: 'Tries.' })\n${code}\n`);
  mkdirSync(join(root, 'node_modules', 'node', 'bin'), { recursive: true });
  writeFileSync(join(root, 'node_modules', 'node', 'package.json'), '{}');
  symlinkSync(process.execPath, join(root, 'node_modules', 'node', 'bin', 'node'));
  return join(folder, 'soakproof.mjs');
}

describe('commands/soakproof', () => {
  it.each(['a#b', '50%20', 'what?'])('runs in a folder whose name an address would read otherwise: %s', (name) => {
    const { stdout, stderr } = spawnSync(
      process.execPath,
      [packageIn(name, "console.log('ran', ...process.argv.slice(2));"), 'new', 'x'],
      {
        encoding: 'utf8',
      },
    );
    expect([stdout, stderr]).toEqual(['ran x\n', '']);
  });

  // POSIX.1-2024, 2.8.2 Exit Status for Commands: above 128 after a signal; shells add its number, and SIGTERM is 15 (POSIX.1-2024, kill).
  it('ends as shells tell of a signal: 128 and its number', async () => {
    const child = spawn(process.execPath, ['--import', OLDER, packageIn('plain', "process.kill(process.pid, 'SIGTERM');"), 'new'], {
      stdio: 'ignore',
    });
    expect(await new Promise((resolve) => child.once('close', resolve))).toBe(128 + 15);
  });
});
