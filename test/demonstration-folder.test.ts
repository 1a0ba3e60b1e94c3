import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, inject, it } from 'vitest';
import { demonstrationOf } from './demonstration-folder.ts';

let clone: string;

function git(...args: readonly string[]): void {
  const who = ['-c', 'user.name=Rowan Alder', '-c', 'user.email=rowan@bench.example'];
  expect(spawnSync('git', [...who, ...args], { cwd: clone, encoding: 'utf8' })).toMatchObject({ status: 0 });
}

beforeEach(() => {
  clone = mkdtempSync(join(inject('scratch'), 'clone-'));
  for (const folder of ['content/devices', 'data']) mkdirSync(join(clone, folder), { recursive: true });
  writeFileSync(join(clone, 'content/devices/larch-2.md'), `the demonstration of ${clone}`);
  writeFileSync(join(clone, 'data/log.csv'), 'time,temperature\n');
  writeFileSync(join(clone, 'astro.config.mjs'), 'export default {};\n');
  git('init', '-q');
  git('add', '.');
  git('commit', '-qm', 'The demonstration');
});

const read = (folder: string) => readFileSync(join(folder, 'content/devices/larch-2.md'), 'utf8');

describe('demonstration-folder', () => {
  it('is the clone as long as nobody has changed it', () => {
    expect(demonstrationOf(clone)).toBe(clone);
  });

  it('comes from the history where an author has changed content/ and committed nothing', () => {
    writeFileSync(join(clone, 'content/devices/larch-2.md'), 'my own');
    const folder = demonstrationOf(clone);
    expect([folder === clone, read(folder)]).toEqual([false, `the demonstration of ${clone}`]);
    expect(readFileSync(join(folder, 'data/log.csv'), 'utf8')).toBe('time,temperature\n');
    rmSync(folder, { recursive: true });
  });

  it('comes from the history where an author has cleared content/ and committed files of their own', () => {
    rmSync(join(clone, 'content'), { recursive: true });
    mkdirSync(join(clone, 'content/devices'), { recursive: true });
    writeFileSync(join(clone, 'content/devices/mine.md'), 'my own');
    git('add', '-A');
    git('commit', '-qm', 'My bench');
    const folder = demonstrationOf(clone);
    expect(read(folder)).toBe(`the demonstration of ${clone}`);
    rmSync(folder, { recursive: true });
  });

  it('is what stands there without git', () => {
    rmSync(join(clone, '.git'), { recursive: true });
    expect(demonstrationOf(clone)).toBe(clone);
  });
});
