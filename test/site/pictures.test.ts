import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { unzipSync } from 'fflate';
import type { Browser } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { hostileFiles } from '../pictures/hostile.ts';
import { NAMES, phoneJpeg, SECRETS, scene } from '../pictures/phone.ts';
import { violationsIn } from './accessibility.ts';
import { openBrowser } from './browser.ts';
import { copySmall, copyUnbuilt, type Ran, removeContents, type TestProject, tree } from './project.ts';
import { type Served, serve } from './server.ts';

const NOTE = 'content/notes/a-second-larch.md';
const SCRIPT = 'content/scripts/a-clock-it-cannot-keep.md';
const PAGE = 'notes/a-second-larch/';
/** In the names of files too there may be what nobody should read. */
const NAMED = 'IMG_HAZELS_KITCHEN';

const SHOWN = `
![The device on the bench, seen from the door](larch-2/${NAMED}.jpg "Read at :value[second.steady_temperature], 'steady'")

![Before](larch-2/before.png)
![After, at :value[second.peak_temperature]](larch-2/after.webp "Later")
`;

let project: TestProject;
let built: Ran;
let site: Map<string, Buffer>;

function put(to: TestProject, path: string, bytes: Uint8Array): void {
  mkdirSync(dirname(join(to.root, path)), { recursive: true });
  writeFileSync(join(to.root, path), bytes);
}

function append(to: TestProject, path: string, text: string): void {
  to.write(path, `${to.read(path)}\n${text}`);
}

beforeAll(async () => {
  project = copySmall('pictures');
  put(project, `data/larch-2/${NAMED}.jpg`, await phoneJpeg(2000, 1500));
  put(
    project,
    'data/larch-2/before.png',
    await sharp(await phoneJpeg())
      .keepMetadata()
      .png()
      .toBuffer(),
  );
  put(
    project,
    'data/larch-2/after.webp',
    await sharp(await scene(700, 500))
      .webp()
      .toBuffer(),
  );
  append(project, NOTE, SHOWN);
  append(project, SCRIPT, `:::cue{at="0:20"}\n![The same device](larch-2/${NAMED}.jpg)\n:::\n`);
  built = project.run('build');
  expect(built.err).not.toContain(': error:');
  expect(built.code).toBe(0);
  site = tree(join(project.root, 'dist'));
});
afterAll(() => project?.remove());

const picturesOf = (page: string) => [...site.keys()].filter((path) => path.startsWith(`${page}pictures/`));
const html = (page: string) => site.get(`${page}index.html`)!.toString('utf8');

describe('pictures of a site', () => {
  it('say nothing but what is seen, in any file of it or in its archives', () => {
    const archives = [...site].filter(([path]) => path.endsWith('.zip'));
    expect(archives).toHaveLength(2);
    const unpacked = archives.flatMap(([name, bytes]) =>
      Object.entries(unzipSync(bytes)).map(([path, content]) => [`${name}: ${path}`, Buffer.from(content)] as const),
    );
    expect(unpacked.some(([path]) => path.endsWith(`data/larch-2/${NAMED}.jpg`))).toBe(true);
    for (const [path, bytes] of [...site, ...unpacked]) {
      const text = bytes.toString('latin1');
      for (const word of SECRETS) expect(text.includes(word), `${path}: ${word}`).toBe(false);
      if (/\.(?:jpg|png|webp)$/.test(path)) for (const name of NAMES) expect(text.includes(name), `${path}: ${name}`).toBe(false);
    }
    expect([...site.keys()].filter((path) => path.includes(NAMED))).toEqual([]);
  });

  it('have several widths, known sizes, a fall back and a way to the whole of each', () => {
    expect(picturesOf(PAGE)).toHaveLength(5 + 3 + 4);
    const page = html(PAGE);
    const images = [
      ...page.matchAll(
        /<a class="whole" href="([^"]*)"[^>]*><picture><source type="image\/webp" srcset="([^"]*)" sizes="[^"]*"><img src="([^"]*)" width="(\d+)" height="(\d+)" alt="([^"]*)" loading="lazy"/g,
      ),
    ];
    expect(images.map(([, , , , width, height]) => [width, height])).toEqual([
      ['1500', '2000'],
      ['480', '640'],
      ['700', '500'],
    ]);
    for (const [, whole = '', srcset = '', fallback = ''] of images) {
      const addresses = [whole, fallback, ...srcset.split(', ').map((each) => each.split(' ')[0]!)];
      for (const address of addresses) expect(site.has(address.slice(1)), address).toBe(true);
    }
    expect(images.map(([, , , , , , alt]) => alt).at(0)).toBe('The device on the bench, seen from the door');
    expect(images.at(2)![6]).toMatch(/^After, at \d/);
  });

  it('stand in the feed with whole addresses, and in the script', () => {
    const feed = site.get('notes.xml')!.toString('utf8');
    const pictures = [...feed.matchAll(/ (?:src|srcset)="([^"]*)"/g)].map(([, address]) => address!);
    expect(pictures.length).toBeGreaterThan(1);
    expect(pictures.filter((address) => !address.startsWith('https://'))).toEqual([]);
    expect(feed).toMatch(/https:\/\/bench\.example\/notes\/a-second-larch\/pictures\/[0-9a-f]{16}-960\.jpg/);
    expect(html('scripts/a-clock-it-cannot-keep/')).toContain('scripts/a-clock-it-cannot-keep/pictures/');
  });

  it('are told while they are made, and cost an unchanged build nothing', () => {
    expect(built.err).toContain('Making pictures: 0 of 3 done.');
    const again = project.run('build');
    expect(again.err).not.toContain('Making pictures');
    expect(again.out).toContain('printed 0 of');
  });

  it('come out of the archive the same, though their author keeps the originals', () => {
    const empty = copyUnbuilt('pictures-again');
    removeContents(empty.root);
    for (const [path, bytes] of Object.entries(unzipSync(site.get(`${PAGE}a-second-larch.zip`)!))) put(empty, path, bytes);
    expect(empty.read('REBUILD.txt')).toMatch(
      /IMG_HAZELS_KITCHEN\.jpg: SHA-256 [0-9a-f]{64}; the original, which its author keeps, [0-9a-f]{64}/,
    );
    expect(empty.run('build').err).not.toContain(': error:');
    const rebuilt = tree(join(empty.root, 'dist'));
    for (const path of picturesOf(PAGE)) expect(rebuilt.get(path)?.equals(site.get(path)!), path).toBe(true);
    empty.remove();
  });

  it('that changed are told by changes', async () => {
    const file = 'data/larch-2/after.webp';
    expect(project.run('publish', {}, [NOTE, '--date', '2026-03-28']).err).toBe('');
    put(
      project,
      file,
      await sharp(await scene(700, 400))
        .webp()
        .toBuffer(),
    );
    expect(project.run('changes').out).toContain(`changed: ${file}`);
  });
});

describe('a picture that cannot be shown', () => {
  it('is a located error of its own, twenty and more together, and dist stays as it was', async () => {
    const before = tree(join(project.root, 'dist'));
    const files = await hostileFiles();
    const folder = join(project.root, 'data', 'bad');
    mkdirSync(folder);
    for (const { path, bytes } of files) put(project, `data/bad/${path}`, bytes);
    mkdirSync(join(folder, 'folder.jpg'));
    const outside = mkdtempSync(join(inject('scratch'), 'outside-'));
    put(project, 'data/bad/inside.jpg', await phoneJpeg());
    writeFileSync(join(outside, 'secret.jpg'), await phoneJpeg());
    symlinkSync(join(outside, 'secret.jpg'), join(folder, 'link.jpg'));
    symlinkSync('inside.jpg', join(folder, 'within.jpg'));
    expect(spawnSync('mkfifo', [join(folder, 'pipe.jpg')]).status).toBe(0);
    const refused = [
      ...files.map(({ path, rule }) => [path, rule]),
      ...['folder', 'link', 'pipe', 'gone'].map((name) => [`${name}.jpg`, '']),
    ];
    const lines = project.read(NOTE).split('\n').length;
    append(project, NOTE, [...refused.map(([path]) => path), 'within.jpg'].map((path) => `![x](bad/${path})\n`).join('\n'));
    const { code, err } = project.run('build');
    expect(code).toBe(1);
    for (const [index, [path]] of refused.entries()) {
      const at = `${NOTE}:${lines + 1 + 2 * index}:1: error: the picture data/bad/${path} `;
      expect(err, at).toContain(at);
    }
    expect(err.match(/: error: /g)).toHaveLength(refused.length);
    expect(err).not.toContain('within.jpg');
    const after = tree(join(project.root, 'dist'));
    expect([...after.keys()]).toEqual([...before.keys()]);
    expect([...after].every(([path, bytes]) => bytes.equals(before.get(path)!))).toBe(true);
  });
});

describe('a page with pictures', () => {
  let browser: Browser;
  let served: Served;
  beforeAll(async () => {
    served = await serve(join(project.root, 'dist'));
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await served?.close();
  });

  it('shows them in any colours, at any width, and axe finds nothing', async () => {
    for (const [width, look] of [
      [360, { colorScheme: 'light' }],
      [1280, { colorScheme: 'dark' }],
      [1280, { forcedColors: 'active' }],
    ] as const) {
      const context = await browser.newContext({ viewport: { width, height: 800 }, bypassCSP: true, ...look });
      const page = await context.newPage();
      await page.goto(served.address + PAGE);
      for (const image of await page.locator('figure.picture img').all()) {
        await image.scrollIntoViewIfNeeded();
        await expect
          .poll(() => image.evaluate((node: HTMLImageElement) => node.complete && node.naturalWidth))
          .toBeGreaterThan(100);
        const box = (await image.boundingBox())!;
        expect(box.x).toBeGreaterThanOrEqual(0);
        expect(box.x + box.width).toBeLessThanOrEqual(width);
      }
      const [before, after] = await page.locator('.pictures figure').all();
      const [first, second] = [(await before!.boundingBox())!, (await after!.boundingBox())!];
      if (width === 360) expect(second.y).toBeGreaterThan(first.y + first.height - 1);
      else expect(second.y).toBe(first.y);
      expect(await violationsIn(page)).toEqual([]);
      await context.close();
    }
  });

  it('shifts nothing when they arrive, and breaks no rule of its own policy', async () => {
    const context = await browser.newContext({ viewport: { width: 700, height: 800 } });
    const page = await context.newPage();
    const refused: string[] = [];
    page.on('console', (message) => refused.push(message.text()));
    let release = () => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    await page.route('**/pictures/**', async (route) => {
      await held;
      await route.continue();
    });
    await page.goto(served.address + PAGE, { waitUntil: 'domcontentloaded' });
    const height = () => page.evaluate(() => document.documentElement.scrollHeight);
    const empty = await height();
    release();
    await page.locator('figure.picture img').last().scrollIntoViewIfNeeded();
    await page.waitForLoadState('networkidle');
    expect(await height()).toBe(empty);
    expect(refused).toEqual([]);
    await context.close();
  });
});
