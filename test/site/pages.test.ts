import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { violationsIn } from './accessibility.ts';
import { demonstrationSite } from './built-site.ts';
import { amissIn } from './fragments.ts';
import { tree } from './project.ts';

const built = demonstrationSite();
/** One address of each kind of page. */
let kinds: Map<string, string>;

beforeAll(() => {
  const pages = [...tree(join(built.root, 'dist')).keys()]
    .filter((path) => path.endsWith('index.html'))
    .map((path) => path.replace(/index\.html$/, ''));
  kinds = new Map(pages.map((path) => [kindOf(path), path]));
  kinds.set('missing', 'no/such/page/');
});

/** So many pages load at once: most of a visit is waiting for the network to be idle. */
const AT_ONCE = 3;

/** What a visit found on the way. */
interface Visit {
  readonly page: Page;
  readonly kind: string;
  /** Addresses that the page asked for. */
  readonly asked: readonly string[];
  /** What the console was told since it was last emptied; an error of ours fails the visit. */
  readonly errors: string[];
}

type Look = Parameters<Browser['newContext']>[0];

/** Opens every kind of page in a fresh profile, with the options for its place among the kinds, and hands each to `look`. */
async function eachKind(optionsOf: (index: number) => Look, look: (visit: Visit) => Promise<void>): Promise<void> {
  const waiting = [...kinds].map((kind, index) => [kind, optionsOf(index)] as const);
  const visitor = async () => {
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) await visit(...next, look);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, visitor));
}

async function visit([kind, path]: readonly [string, string], options: Look, look: (visit: Visit) => Promise<void>): Promise<void> {
  const context = await built.browser.newContext(options);
  const page = await context.newPage();
  await page.addInitScript(WATCH_LAYOUT);
  const [errors, asked]: [string[], string[]] = [[], []];
  page.on('console', (message) => {
    if (message.type() === 'error' && !message.text().includes('404')) errors.push(message.text());
  });
  page.on('pageerror', (thrown) => errors.push(thrown.message));
  page.on('request', (request) => asked.push(request.url()));
  await page.goto(built.served.address + path, { waitUntil: 'networkidle' });
  await look({ page, kind, asked, errors });
  expect(errors, `${kind}: errors in the console`).toEqual([]);
  await context.close();
}

/** Scrolls through the page; nothing of it may have moved, and nothing may be wider than the window. */
async function standsStill(page: Page, kind: string, width: number): Promise<void> {
  await page.evaluate(
    '(async () => { for (let y = 0; y < document.body.scrollHeight; y += 600) { scrollTo(0, y); await new Promise((r) => setTimeout(r, 20)); } })()',
  );
  expect(await page.evaluate('window.shifted'), `${kind}: layout shift`).toBe(0);
  expect(await page.evaluate('document.documentElement.scrollWidth'), `${kind}: width`).toBeLessThanOrEqual(width);
}

/** `notes/x/` is of the kind `notes`, `notes/x/ledger/` of the kind `notes/ledger`; `runs/`, the index, of the kind `runs/`. */
function kindOf(path: string): string {
  const parts = path.split('/').filter((part) => part !== '');
  if (parts.length === 1 && parts[0] !== 'method') return path;
  return (parts[0] === 'method' ? parts : parts.toSpliced(1, 1)).join('/');
}

/** Sums layout shifts as the browser reports them. */
const WATCH_LAYOUT = `
  window.shifted = 0;
  new PerformanceObserver((list) => { for (const entry of list.getEntries()) window.shifted += entry.value; })
    .observe({ type: 'layout-shift', buffered: true });
`;

/** Puts a script into the page as an attacker would. */
const INLINE_SCRIPT = `{
  const script = document.createElement('script');
  script.textContent = 'window.inlineRan = true';
  document.body.append(script);
}`;

describe('every kind of page', () => {
  it('is there to look at', () => {
    expect([...kinds.keys()].sort()).toEqual([
      '',
      'about/',
      'compare/',
      'comparisons',
      'devices',
      'guide',
      'guide/',
      'method',
      'method/accuracy',
      'missing',
      'notes',
      'notes/ledger',
      'record-copies',
      'record-copies/',
      'runs',
      'runs/',
      'scripts',
      'scripts/ledger',
      'scripts/prompter',
      'search/',
      'verify/',
    ]);
  });

  it('has every id once, a target for every address with a fragment, and a link of another page that leads to it', () => {
    expect(amissIn(join(built.root, 'dist'))).toEqual({ twice: [], targetless: [], unlinked: [] });
  });

  // Each kind is seen in two of the four looks; every other kind in the other two, so that what pages share is seen in all four.
  it.each([
    ['1280 px wide', 0, { viewport: { width: 1280, height: 800 } }],
    ['on a phone 360 px wide', 1, { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true }],
  ] as const)(
    'shifts nothing, scrolls sideways nowhere, asks no other host, has nothing that axe finds and breaks no policy of its own, %s',
    async (width, turn, options) => {
      const schemeOf = (index: number) => ((index + turn) % 2 === 0 ? 'light' : 'dark');
      const optionsOf = (index: number) => ({ ...options, colorScheme: schemeOf(index) }) as const;
      await eachKind(optionsOf, async ({ page, kind, asked, errors }) => {
        const look = `${width}, ${schemeOf([...kinds.keys()].indexOf(kind))}`;
        await standsStill(page, `${kind}, ${look}`, options.viewport.width);
        expect(asked.length, kind).toBeGreaterThan(1);
        expect(asked.filter((url) => !url.startsWith(built.served.address) && !url.startsWith('data:'))).toEqual([]);
        // That policy really blocks what is inline.
        expect(errors.splice(0), kind).toEqual([]);
        await page.evaluate(INLINE_SCRIPT);
        expect(await page.evaluate('window.inlineRan'), kind).toBeUndefined();
        expect(errors.splice(0).join(' '), kind).toMatch(/Content Security Policy/);
        expect(await violationsIn(page), `${kind}, ${look}`).toEqual([]);
        // What the policy refused to axe, which is no part of the page.
        errors.splice(0);
      });
    },
  );

  it('lets a note begin within the first window, its text within the first and a half on a phone, in few bytes', async () => {
    const note = built.served.address + kinds.get('notes');
    for (const [width, height, windows] of [
      [1280, 800, 1],
      [360, 740, 1.5],
    ] as const) {
      const page = await built.browser.newPage({ viewport: { width, height } });
      await page.goto(note, { waitUntil: 'networkidle' });
      const first = (await page.locator('.words > p').first().boundingBox())!;
      expect(first.y, `first sentence at ${width} px`).toBeLessThan(windows * height);
      await page.close();
    }
    const html = readFileSync(join(built.root, 'dist', kinds.get('notes')!, 'index.html'));
    expect(gzipSync(html, { level: 9 }).length).toBeLessThanOrEqual(60_000);
    // The heaviest note too, as hosts send it: its thermal images stand in it twice, for two widths, further apart than gzip looks back.
    const notes = readdirSync(join(built.root, 'dist', 'notes'), { withFileTypes: true }).filter((entry) => entry.isDirectory());
    const sizes = notes.map(
      ({ name }) => brotliCompressSync(readFileSync(join(built.root, 'dist', 'notes', name, 'index.html'))).length,
    );
    expect(sizes.length).toBeGreaterThan(1);
    expect(Math.max(...sizes)).toBeLessThanOrEqual(60_000);
  });

  it('reads whole with scripting off', async () => {
    await eachKind(
      () => ({ javaScriptEnabled: false }),
      async ({ page, kind }) => {
        const least = kind.startsWith('scripts') || kind.endsWith('ledger') ? 1500 : 40;
        expect((await page.locator('main').innerText()).length, kind).toBeGreaterThan(least);
        if (kind !== 'notes') return;
        const svg = page.locator('figure.plot .wide svg').first();
        expect(await svg.isVisible()).toBe(true);
        const held = page.locator('a.held').first();
        await held.click();
        const note = `held:${await held.getAttribute('id')}`;
        expect(page.url()).toBe(`${built.served.address}${kinds.get('notes')}#${note}`);
        expect(await page.locator(`[id="${note}"]`).isVisible()).toBe(true);
      },
    );
  });
});

describe('a held number', () => {
  it('tells what holds it when the keyboard reaches it, and lets go with Escape', async () => {
    const page = await built.browser.newPage();
    await page.goto(built.served.address + kinds.get('notes'));
    const held = page.locator('a.held').first();
    await held.focus();
    const tip = page.locator('.held-tip');
    expect(await tip.isVisible()).toBe(true);
    expect(await tip.innerText()).toContain((await held.innerText()).trim());
    expect(await held.getAttribute('aria-describedby')).toBe('held-tip');
    await page.keyboard.press('Tab');
    expect(await page.evaluate('document.activeElement.closest(".held-tip") !== null')).toBe(true);
    await page.keyboard.press('Escape');
    expect(await tip.count()).toBe(0);
    await page.close();
  });

  it('does so by touch too, inside a narrow window', async () => {
    const context = await built.browser.newContext({ viewport: { width: 360, height: 740 }, hasTouch: true });
    const page = await context.newPage();
    await page.goto(built.served.address + kinds.get('notes'));
    const all = page.locator('.words a.held');
    for (let index = 0; index < Math.min(8, await all.count()); index += 1) {
      await page.keyboard.press('Escape');
      await all.nth(index).tap();
      const box = (await page.locator('.held-tip').boundingBox())!;
      expect(box.x).toBeGreaterThanOrEqual(0);
      expect(box.x + box.width).toBeLessThanOrEqual(360);
    }
    await context.close();
  });

  it('becomes a numbered note in print', async () => {
    const page = await built.browser.newPage();
    await page.goto(built.served.address + kinds.get('notes'));
    await page.emulateMedia({ media: 'print' });
    const mark = await page.evaluate('getComputedStyle(document.querySelector("a.held"), "::after").content');
    expect(mark).toContain('1');
    expect(await page.locator('.held-notes').isVisible()).toBe(true);
    expect((await page.pdf({ format: 'A4' })).subarray(0, 5).toString()).toBe('%PDF-');
    await page.close();
  });
});
