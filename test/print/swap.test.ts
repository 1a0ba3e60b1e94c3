import { spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, inject, it } from 'vitest';
import { type Kernel, NO_KERNEL, openKernel } from '../../src/print/exchange.ts';
import { sideFolder, swap, undoSwap } from '../../src/print/swap.ts';

const CHILD = fileURLToPath(new URL('swap-in-child.ts', import.meta.url));
const FILES = ['index.html', 'notes/index.html'];
let root: string;

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-swap-'));
});
afterEach(() => rmSync(root, { recursive: true }));

const site = () => join(root, 'dist');
const last = () => join(root, '.cache', 'site-last');

function writeSite(folder: string, text: string): void {
  for (const file of FILES) {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    writeFileSync(join(folder, file), `${text} ${file}`);
  }
}

/** The text of which every file of a site is; throws where it is torn, and `none` where there is none. */
function whole(folder = site()): string {
  if (!existsSync(folder)) return 'none';
  const names = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  expect(names.length, 'all files are there').toBe(FILES.length);
  const texts = new Set(FILES.map((file) => readFileSync(join(folder, file), 'utf8').replace(` ${file}`, '')));
  expect(texts.size, 'all files are of one site').toBe(1);
  return [...texts][0]!;
}

/** Each operation takes a process of its own; one that is killed leaves no compiled code to the next, one that ends does. */
function inChild(operation: number, way: string) {
  const env = { ...process.env, NODE_COMPILE_CACHE: join(inject('scratch'), 'compiled-swap') };
  return spawnSync(process.execPath, [CHILD, root, String(operation), way], { encoding: 'utf8', env });
}

const nothingBeside = () => expect(readdirSync(join(root, '.cache'))).toEqual([]);

const KERNELS: [string, () => Promise<Kernel>][] = [
  ['with the exchange of the kernel', openKernel],
  ['with two renames', () => Promise.resolve(NO_KERNEL)],
];

describe.each(KERNELS)('print/swap, %s', (_name, open) => {
  it('puts the printed site in the place of the old one and leaves nothing beside it', async () => {
    writeSite(site(), 'old');
    writeSite(sideFolder(root), 'new');
    await swap(root, await open());
    expect(whole()).toBe('new');
    nothingBeside();
  });

  it('makes the first site', async () => {
    writeSite(sideFolder(root), 'new');
    await swap(root, await open());
    expect(whole()).toBe('new');
    nothingBeside();
  });

  it('refuses a side folder that holds no site', async () => {
    writeSite(site(), 'old');
    mkdirSync(sideFolder(root), { recursive: true });
    await expect(swap(root, await open())).rejects.toThrow('holds no site');
    expect(whole()).toBe('old');
  });
});

describe('print/exchange', () => {
  it('exchanges folders in one step on Linux, and changes nothing where it cannot', async () => {
    const kernel = await openKernel('linux');
    writeSite(site(), 'old');
    writeSite(sideFolder(root), 'new');
    expect(kernel.exchange(sideFolder(root), site())).toBe(true);
    expect([whole(), whole(sideFolder(root))]).toEqual(['new', 'old']);
    expect(kernel.exchange(join(root, 'none'), site())).toBe(false);
    expect(whole()).toBe('new');
    expect(kernel.sync(root)).toBe(true);
  });

  it('says no where there is no such door', async () => {
    expect(await openKernel('win32')).toBe(NO_KERNEL);
  });
});

describe('print/swap, cut short', () => {
  // Nobody can say whether the build of a side folder would have come to its end: the next command publishes none of it.
  it.each([
    ['while the site was printed', () => writeSite(sideFolder(root), 'half')],
    [
      'between the two renames',
      () => {
        writeSite(sideFolder(root), 'new');
        renameSync(site(), last());
      },
    ],
    ['after both renames', () => writeSite(last(), 'older')],
  ])('is undone when it was cut short %s', (_moment, prepare) => {
    writeSite(site(), 'old');
    mkdirSync(join(root, '.cache'), { recursive: true });
    prepare();
    undoSwap(root);
    expect(whole()).toBe('old');
    nothingBeside();
  });

  it('refuses a dist that is a link', () => {
    mkdirSync(join(root, 'elsewhere'));
    symlinkSync(join(root, 'elsewhere'), site());
    expect(() => undoSwap(root)).toThrow('dist is a symbolic link');
  });

  it.each([
    ['kernel', ['old', 'new']],
    // The one moment that the kernel's exchange does away with.
    ['none', ['old', 'none', 'new']],
  ])('is killed at each of its operations (%s), and the next command has a whole site', (way, allowed) => {
    const seen = new Set<string>();
    let killed = 0;
    writeSite(sideFolder(root), 'new');
    expect(inChild(Number.MAX_SAFE_INTEGER, way).status).toBe(0);
    for (let operation = 0; ; operation++) {
      rmSync(site(), { recursive: true, force: true });
      writeSite(site(), 'old');
      rmSync(sideFolder(root), { recursive: true, force: true });
      writeSite(sideFolder(root), 'new');
      const { status, signal, stderr } = inChild(operation, way);
      const found = whole();
      expect(allowed).toContain(found);
      seen.add(found);
      undoSwap(root);
      expect(whole()).toBe(found === 'none' ? 'old' : found);
      nothingBeside();
      if (signal === null) {
        expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
        break;
      }
      killed++;
    }
    expect([...seen].sort()).toEqual([...allowed].sort());
    expect(killed).toBeGreaterThan(10);
  });
});
