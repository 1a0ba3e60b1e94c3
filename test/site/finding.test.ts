/** Finding in a real browser: the index of runs with its filters, the search, the feeds, the sitemap. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { manyRuns } from '../bench/many-runs.ts';
import { violationsIn } from './accessibility.ts';
import { builtSite } from './built-site.ts';

const MANY = fileURLToPath(new URL('../bench/print-many-runs.ts', import.meta.url));

const built = builtSite('finding');

/** Waits for a loaded machine too. */
function eventually<T>(look: () => T) {
  return expect.poll(look);
}

/** A page in a fresh profile. */
async function open(
  path: string,
  options: Parameters<Browser['newContext']>[0] = {},
): Promise<{ page: Page; context: BrowserContext }> {
  const context = await built.browser.newContext(options);
  const page = await context.newPage();
  await page.goto(built.served.address + path, { waitUntil: 'networkidle' });
  return { page, context };
}

/** Of the rows that are shown, in their order; in one step, since a thousand of them one by one take long. */
const titles = (page: Page) => page.locator('#runs tbody tr:not([hidden]) th > a').allTextContents();
const count = (page: Page) => page.locator('#count').innerText();

describe('the index of runs', () => {
  it('is filtered and ordered by the keyboard alone, and its address opens the same rows in a fresh profile', async () => {
    const { page, context } = await open('runs/');
    const all = await titles(page);
    expect(await count(page)).toBe(`${all.length} runs`);
    await page.locator('#words').focus();
    await page.keyboard.type('hour soak');
    await page.keyboard.press('Tab');
    // The first field that offers a choice: device and maker are the same for all and not shown.
    expect(await page.evaluate('document.activeElement.name')).toBe('specimen');
    await page.keyboard.press('Tab');
    await page.keyboard.type('steady');
    await eventually(() => page.url()).toContain('outcome=steady');
    const heading = page.getByRole('button', { name: 'peak temperature' });
    await heading.focus();
    await page.keyboard.press('Enter');
    const chosen = ['Fast setting, hour soak', 'Quick setting, hour soak', 'Brisk setting, hour soak', 'Rated setting, hour soak'];
    await eventually(() => titles(page)).toEqual(chosen);
    expect(await count(page)).toBe(`4 of ${all.length} runs`);
    expect(await heading.locator('..').getAttribute('aria-sort')).toBe('descending');
    const address = page.url().slice(built.served.address.length);
    expect(address).toBe('runs/?words=hour+soak&outcome=steady&order=-peak_temperature');
    await context.close();

    const fresh = await open(address);
    expect(await titles(fresh.page)).toEqual(chosen);
    expect(await fresh.page.locator('#words').inputValue()).toBe('hour soak');
    await fresh.context.close();
  });

  it('goes back and forth with the browser, words as one step', async () => {
    const { page, context } = await open('runs/');
    const all = await count(page);
    await page.locator('#words').pressSequentially('fast');
    await page.locator('#outcome').selectOption('throttled');
    await page.goBack();
    await eventually(() => page.locator('#outcome').inputValue()).toBe('');
    expect(page.url()).toMatch(/\?words=fast$/);
    await page.goBack();
    await eventually(() => count(page)).toBe(all);
    await page.goForward();
    await eventually(() => page.locator('#words').inputValue()).toBe('fast');
    await context.close();
  });

  it('says that nothing answers, and offers the ways out', async () => {
    const { page, context } = await open('runs/?specimen=no-2&outcome=throttled');
    expect(await count(page)).toMatch(/^0 of /);
    expect(await page.locator('#none').innerText()).toContain('No run matches these filters.');
    await page.getByRole('button', { name: 'Without the specimen: 1 run' }).press('Enter');
    await eventually(() => titles(page)).toEqual(['Fast setting, hour soak']);
    expect(await page.locator('#none').isVisible()).toBe(false);
    expect(await page.evaluate('document.activeElement.id')).toBe('words');
    await context.close();
  });

  it('tells what an address asks for in vain, announces counts, and shows the rest', async () => {
    const { page, context } = await open('runs/?device=larch-3&date=2026-03-12..2026-03-14&colour=red');
    const told = await page.locator('#told').innerText();
    expect(told).toContain('No run here has the device “larch-3”; it is ignored. Did you mean “larch-2”?');
    expect(told).toContain('“colour” is not a filter of this page');
    expect(await page.locator('#told, #count').evaluateAll((all) => all.map((each) => each.getAttribute('role')))).toEqual([
      'status',
      'status',
    ]);
    expect(await titles(page)).toEqual(['Fast setting, hour soak', 'Quick setting, hour soak']);
    await context.close();
  });

  it('is complete with scripting off, without filters that could not work', async () => {
    const { page, context } = await open('runs/?outcome=throttled', { javaScriptEnabled: false });
    const index = JSON.parse(built.project.read('dist/runs/index.json')) as {
      runs: { title: string; figures: Record<string, string> }[];
    };
    expect(await titles(page)).toEqual(index.runs.map(({ title }) => title));
    const text = (await page.locator('#runs').innerText()).replaceAll(/\s/g, ' ');
    for (const { figures } of index.runs)
      for (const shown of Object.values(figures)) expect(text).toContain(shown.replaceAll(/\s/g, ' '));
    expect(await page.locator('#filters').isVisible()).toBe(false);
    expect(await page.locator('#runs button').count()).toBe(0);
    await context.close();
  });
});

describe('the search', () => {
  it('finds a figure and a note, remembers the words in the address, and leads there', async () => {
    const { page, context } = await open('search/');
    await page.locator('#words').pressSequentially('stedy temperature');
    const link = page.locator('#results a');
    await eventually(() => link.first().innerText()).toBe('steady temperature');
    await eventually(() => page.locator('[data-kind=notes] a').count()).toBeGreaterThan(0);
    expect(await page.locator('#count').innerText()).toMatch(/^\d+ results$/);
    expect(await page.locator('[data-kind=notes] mark').first().innerText()).toMatch(/steady|temperature/i);
    expect(page.url()).toMatch(/\?words=stedy\+temperature$/);
    await link.first().press('Enter');
    await page.waitForURL(`${built.served.address}method/#steady_temperature`);
    await page.goBack();
    await eventually(() => page.locator('#results a').first().innerText()).toBe('steady temperature');
    await context.close();
  });

  it('finds a held number as it is printed, and says where nothing is found', async () => {
    const { page, context } = await open('search/?words=59.5 °C');
    await eventually(() => page.locator('[data-kind=notes] a').allInnerTexts()).toContain('Paying for a clock it cannot keep');
    await page.locator('#words').fill('zeppelin');
    await eventually(() => page.locator('#count').innerText()).toMatch(/^Nothing has these words/);
    expect(await page.locator('#results a').count()).toBe(0);
    await context.close();
  });

  it('says with scripting off that it needs it, and leads to the lists', async () => {
    const { page, context } = await open('search/', { javaScriptEnabled: false });
    const main = await page.locator('main').innerText();
    expect(main).toContain('The search needs scripting');
    expect(await page.locator('#words').isVisible()).toBe(false);
    expect(await page.locator('main li a').count()).toBeGreaterThan(2);
    await context.close();
  });
});

describe('both, filled', () => {
  const filled = [
    'runs/?outcome=steady&order=-load_power&device=larch-3',
    'runs/?specimen=no-2&outcome=throttled',
    'search/?words=limit',
  ];

  it.each(['light', 'dark'] as const)(
    'have nothing that axe finds, in %s, and scroll sideways nowhere at 360 px',
    async (colorScheme) => {
      for (const path of filled) {
        const { page, context } = await open(path, { colorScheme, bypassCSP: true, viewport: { width: 360, height: 740 } });
        await eventually(() => count(page)).toMatch(/\d/);
        expect(await violationsIn(page), path).toEqual([]);
        expect(await page.evaluate('document.documentElement.scrollWidth'), path).toBeLessThanOrEqual(360);
        await context.close();
      }
    },
  );
});

describe('feeds and sitemap', () => {
  it('are named in the head and at the foot of the home page', async () => {
    const home = built.project.read('dist/index.html');
    expect(home).toMatch(/<link rel="alternate" type="application\/atom\+xml" title="Bench notes" href="\/notes\.xml">/);
    expect(home).toMatch(/<footer[^>]*>.*href="\/notes\.xml".*<\/footer>/s);
    expect(built.project.read('dist/notes.xml').match(/<entry>/g)).toHaveLength(2);
  });

  it('list every page that there is, and no redirect, feed or missing page', () => {
    const listed = [...built.project.read('dist/sitemap.xml').matchAll(/<loc>https:\/\/bench\.example\/([^<]*)<\/loc>/g)].map(
      ([, path]) => path!,
    );
    for (const path of listed) expect(built.project.read(`dist/${path}index.html`)).toContain('</main>');
    expect(listed).toContain('runs/');
    expect(listed.length).toBe(new Set(listed).size);
    expect(listed.filter((path) => /xml|json|404/.test(path))).toEqual([]);
    expect(built.project.read('dist/robots.txt')).toContain('Sitemap: https://bench.example/sitemap.xml');
  });

  it('carry no word of what is not published', () => {
    for (const path of ['notes.xml', 'sitemap.xml', 'runs/index.html', 'runs/index.json', 'search/index.html', 'search/index.json'])
      expect(built.project.read(`dist/${path}`), path).not.toMatch(/larch-preview|the-next-firmware/);
  });
});

// Last, since it prints another index into the same site.
describe('an index of 1,000 runs', () => {
  it('stays below 150 kB compressed, and answers as a look through all its runs does', async () => {
    const done = spawnSync(process.execPath, [MANY, '1000'], { cwd: built.project.root, encoding: 'utf8' });
    expect(done.stderr).toBe('');
    const bytes = gzipSync(readFileSync(join(built.project.root, 'dist', 'runs', 'index.html'))).length;
    expect(bytes).toBeLessThan(150_000);
    const { rows, choices, clocks } = manyRuns(1000);
    const wanted = rows.filter((row, at) => {
      const clock = clocks[at];
      return (
        row.outcomes.includes('throttled') && clock !== null && clock! >= choices.clocks.findIndex(({ id }) => id === '2.0GHz')
      );
    });
    const { page, context } = await open('runs/?outcome=throttled&clock=2.0GHz..');
    expect(wanted.length).toBeGreaterThan(60);
    await eventually(() => count(page)).toBe(`${wanted.length} of 1000 runs`);
    await eventually(() => titles(page)).toEqual(wanted.map(({ title }) => title));
    await page.locator('#clear').press('Enter');
    await eventually(async () => (await titles(page)).length).toBe(1000);
    await context.close();
  });
});
