import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { movedFiles, movedPages } from '../../../src/compute/published-state/redirects.ts';
import { openStore } from '../../../src/compute/store/store.ts';
import type { Register } from '../../../src/register/register.ts';

const root = mkdtempSync(join(tmpdir(), 'soakproof-moved-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

const place = { file: 'x', line: 1, column: 1 };
const item = (id: string, ...was: string[]) =>
  [id, { id, title: `Title of ${id}`, was: was.map((address) => ({ address, place })) }] as const;
const REGISTER = {
  runs: new Map([item('new', 'runs/old/', 'runs/elder/'), item('hidden', 'runs/never/'), item('same')]),
  devices: new Map([item('larch-3', 'devices/larch-2/')]),
  comparisons: new Map(),
} as unknown as Register;

describe('compute/published-state/redirects', () => {
  it('leads from every former address to a page that the site has, and from no other', () => {
    expect(movedPages(REGISTER, (page) => page !== 'runs/hidden/').map(({ from, to }) => `${from} ${to}`)).toEqual([
      'runs/old/ runs/new/',
      'runs/elder/ runs/new/',
      'devices/larch-2/ devices/larch-3/',
    ]);
  });

  it('keeps the bytes of all files beside the page at their former addresses, and writes a page that leads on', () => {
    const store = openStore(root);
    const files = [
      { path: 'runs/new/figures.json', blob: 'a' },
      { path: 'runs/new/data/new-clean.csv', blob: 'b' },
      { path: 'runs/new-one/figures.json', blob: 'c' },
    ];
    const moved = movedFiles(store, [{ from: 'runs/old/', to: 'runs/new/', title: 'The <new> run' }], files);
    expect(moved.slice(1)).toEqual([
      { path: 'runs/old/figures.json', blob: 'a' },
      // Under its former name, and under the one that the description beside it has for it.
      { path: 'runs/old/data/old-clean.csv', blob: 'b' },
      { path: 'runs/old/data/new-clean.csv', blob: 'b' },
    ]);
    expect(moved[0]?.path).toBe('runs/old/index.html');
    const page = Buffer.from(store.bytes(moved[0]!.blob)!).toString('utf8');
    expect(page).toContain('content="0; url=../../runs/new/"');
    expect(page).toContain('<a href="../../runs/new/">The &lt;new&gt; run</a>');
  });

  it('gives each address one file: the one that descriptions name by it', () => {
    const files = [
      { path: 'runs/new/data/old-soak.csv', blob: 'a' },
      { path: 'runs/new/data/new-soak.csv', blob: 'b' },
    ];
    const moved = movedFiles(openStore(root), [{ from: 'runs/old/', to: 'runs/new/', title: 'A run' }], files).slice(1);
    expect(moved.map(({ path, blob }) => `${path} ${blob}`).toSorted()).toEqual([
      'runs/old/data/new-soak.csv b',
      'runs/old/data/old-soak.csv a',
    ]);
  });
});
