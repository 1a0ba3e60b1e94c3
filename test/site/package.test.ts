import { mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { copyPublication, installInto, soakproof } from '../package/installed.ts';
import { differences, tree } from './project.ts';

let folder: string;

beforeAll(() => {
  folder = join(inject('scratch'), 'publication');
  mkdirSync(folder);
  installInto(folder);
});

describe('the package', () => {
  it('lists its commands, those that an author runs', () => {
    const { code, out } = soakproof(folder, '--help');
    expect(code).toBe(0);
    expect(out).toContain('\n  check ');
    expect(out).not.toContain('\n  lint ');
  });

  it('says what is missing in a folder that is no publication', () => {
    expect(soakproof(folder, 'check')).toEqual({
      code: 2,
      out: '',
      err: 'There is no publication in this folder: no astro.config.mjs. Go to its folder, or make one with `soakproof new`.\n',
    });
    expect(soakproof(folder, 'chek').err).toBe('There is no command chek. `soakproof --help` lists them.\n');
  });

  it('makes a publication that builds at once, empty as it is', () => {
    const root = join(inject('scratch'), 'empty-publication');
    mkdirSync(root);
    symlinkSync(join(folder, 'node_modules'), join(root, 'node_modules'), 'dir');
    // As npm leaves it where the packed file was installed.
    writeFileSync(join(root, 'package.json'), '{ "dependencies": { "soakproof": "file:soakproof.tgz" } }');
    expect(soakproof(root, 'new', '.')).toMatchObject({ code: 0, err: '' });
    expect(soakproof(root, 'check')).toEqual({ code: 0, out: 'No problems found.\n', err: '' });
    const { code, err } = soakproof(root, 'build');
    expect(code, err).toBe(0);
    expect(readFileSync(join(root, 'dist/index.html'), 'utf8')).toContain('My bench');
  });

  it('prints a publication to the same bytes as the clone does, and leaves no file of its own in it', () => {
    copyPublication(inject('small'), folder);
    const { code, err } = soakproof(folder, 'build');
    expect(code, err).toBe(0);
    expect(differences(tree(join(folder, 'dist')), tree(join(inject('small'), 'dist')))).toEqual([]);
    expect(readdirSync(folder).sort()).toEqual(['.astro', '.cache', 'astro.config.mjs', 'content', 'data', 'dist', 'node_modules']);
  });
});
