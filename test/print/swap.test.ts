import { existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { finishSwap, sideFolder, swap } from '../../src/print/swap.ts';

let root: string;
const site = (name = 'dist') => join(root, name);
const index = () => readFileSync(join(root, 'dist', 'index.html'), 'utf8');
const writeSite = (folder: string, text: string) => {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'index.html'), text);
};

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-swap-'));
});
afterEach(() => rmSync(root, { recursive: true }));

describe('print/swap', () => {
  it('puts the printed site in the place of the old one and leaves nothing beside it', () => {
    writeSite(site(), 'old');
    writeSite(sideFolder(root), 'new');
    swap(root);
    expect(index()).toBe('new');
    for (const name of ['site-next', 'site-last', 'site-complete']) expect(existsSync(join(root, '.cache', name))).toBe(false);
  });

  it('makes the first site', () => {
    writeSite(sideFolder(root), 'new');
    swap(root);
    expect(index()).toBe('new');
  });

  it('refuses a side folder that holds no site', () => {
    writeSite(site(), 'old');
    mkdirSync(sideFolder(root), { recursive: true });
    expect(() => swap(root)).toThrow('holds no site');
    expect(index()).toBe('old');
  });

  // A swap has four moments at which a process can end; the next command must find or make one whole site after each.
  it.each([
    ['before the site was complete', () => writeSite(sideFolder(root), 'half'), 'old'],
    [
      'after the mark that it is complete',
      () => {
        writeSite(sideFolder(root), 'new');
        writeFileSync(join(root, '.cache', 'site-complete'), '');
      },
      'new',
    ],
    [
      'between the two renames',
      () => {
        writeSite(sideFolder(root), 'new');
        writeFileSync(join(root, '.cache', 'site-complete'), '');
        renameSync(site(), join(root, '.cache', 'site-last'));
      },
      'new',
    ],
    [
      'after both renames',
      () => {
        writeSite(join(root, '.cache', 'site-last'), 'older');
        writeFileSync(join(root, '.cache', 'site-complete'), '');
      },
      'old',
    ],
  ])('is finished or undone when it was cut short %s', (_moment, prepare, expected) => {
    writeSite(site(), 'old');
    prepare();
    finishSwap(root);
    expect(index()).toBe(expected);
    for (const name of ['site-next', 'site-last', 'site-complete']) expect(existsSync(join(root, '.cache', name))).toBe(false);
  });

  it('brings the last site back where only that is left', () => {
    writeSite(join(root, '.cache', 'site-last'), 'last');
    finishSwap(root);
    expect(index()).toBe('last');
  });
});
