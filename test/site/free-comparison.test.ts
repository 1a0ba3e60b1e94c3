import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { violationsIn } from './accessibility.ts';
import { builtSite } from './built-site.ts';

/** The comparison of the demonstration, in its own order. */
const ALIASES = new Map([
  ['rated', 'larch-rated'],
  ['brisk', 'larch-brisk'],
  ['quick', 'larch-quick'],
  ['fast', 'larch-fast'],
]);
const RUNS = [...ALIASES.values()];
/** Their names in the browser: what of their titles tells them apart. */
const NAMES = /Rated|Brisk|Quick|Fast/g;
const TWO = '?runs=larch-rated+larch-fast';

const built = builtSite('free-comparison');
/** What the console of any page said, and what of policy or program failed. */
const said: string[] = [];

interface Opened {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Paths below runs/ that were asked for. */
  readonly asked: Set<string>;
}

/** Opens a view in a fresh profile; with runs in it, waits for its drawing. */
async function open(query: string, options: Parameters<Browser['newContext']>[0] = {}): Promise<Opened> {
  const context = await built.browser.newContext(options);
  const page = await context.newPage();
  const asked = new Set<string>();
  page.on('request', (request) => asked.add(request.url().slice(built.served.address.length)));
  page.on('console', (message) => said.push(message.text()));
  page.on('pageerror', (thrown) => said.push(thrown.message));
  await page.goto(`${built.served.address}compare/${query}`, { waitUntil: 'networkidle' });
  return { page, context, asked: asked };
}

const drawing = async (page: Page) => {
  await page.waitForSelector('#drawn svg');
  return page.locator('#drawn').innerHTML();
};

/** Walks by the Tab key alone until the element has the focus. */
async function tabTo(page: Page, selector: string): Promise<void> {
  const wanted = page.locator(selector);
  for (let pressed = 0; pressed < 120; pressed += 1) {
    if (await wanted.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`the keyboard does not reach ${selector}`);
}

interface Downloaded {
  readonly figures: Readonly<Record<string, unknown>>;
  readonly sources: unknown;
}

/** The unrounded figures that the page offers for download. */
async function downloaded(page: Page): Promise<Downloaded> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('link', { name: 'figures.json' }).click()]);
  return JSON.parse(readFileSync(await download.path(), 'utf8'));
}

/** Ids in place of aliases. */
function withIds(text: string): string {
  return [...ALIASES].reduce((all, [alias, id]) => all.replaceAll(new RegExp(`(?<![\\w/-])${alias}(?![\\w-])`, 'g'), id), text);
}

const rendered = (page: Page) =>
  page.locator('.compared table').evaluateAll((tables) => tables.map((table) => table.textContent.replaceAll(/\s/g, '')));

describe('a free comparison made by keyboard alone', () => {
  let first: Opened;
  let address: string;
  let picture: string;
  let figures: Downloaded;

  test('is drawn and computed box by box, and its address is copied', async () => {
    first = await open('', { permissions: ['clipboard-read', 'clipboard-write'], acceptDownloads: true });
    const { page } = first;
    for (const id of RUNS) {
      await page.locator('body').evaluate(() => (document.activeElement as HTMLElement).blur());
      await tabTo(page, `#run-${id}`);
      await page.keyboard.press('Space');
      await expect.poll(() => page.locator('#result [aria-label="Runs"] tbody tr').count()).toBe(RUNS.indexOf(id) + 1);
    }
    await tabTo(page, '#shown input[value="clock"]');
    await page.keyboard.press('Space');
    await expect.poll(() => page.locator('#plot-about').textContent()).toContain('and clock over time');
    await tabTo(page, '#copy');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('#said').textContent()).toBe('The address of this view is copied.');
    address = await page.evaluate(() => navigator.clipboard.readText());
    picture = await drawing(page);
    figures = await downloaded(page);
    expect(address).toBe(`${built.served.address}compare/?runs=${RUNS.join('+')}&show=temperature+clock`);
  });

  test('is the same in a fresh profile: picture, tables, figures', async () => {
    const { page, context } = await open(address.slice(`${built.served.address}compare/`.length), { acceptDownloads: true });
    expect(await drawing(page)).toBe(picture);
    expect(await downloaded(page)).toEqual(figures);
    expect(await rendered(page)).toEqual(await rendered(first.page));
    await context.close();
  });

  test('has to the last digit the figures that stage 1 gives for a comparison of the same runs', () => {
    const stage1 = JSON.parse(readFileSync(join(built.project.root, 'dist/comparisons/larch-steps/figures.json'), 'utf8'));
    const text = JSON.stringify({ figures: stage1.figures, sources: stage1.sources }).replaceAll('larch-steps', 'chosen-runs');
    const { figures: own, sources } = figures;
    expect(Object.keys(own).length).toBeGreaterThan(30);
    expect({ figures: own, sources }).toEqual(JSON.parse(withIds(text)));
  });

  test('prints them as the page of that comparison does', async () => {
    const { page, context } = await open('');
    await page.goto(`${built.served.address}comparisons/larch-steps/`);
    const printed = await rendered(page);
    expect(printed.length).toBeGreaterThan(5);
    const inBrowser = await rendered(first.page);
    expect(inBrowser.map((text) => text.replaceAll(NAMES, (name) => name.toLowerCase()))).toEqual(printed);
    await context.close();
  });

  test('goes back a step, and forth again', async () => {
    const { page } = first;
    await page.goBack();
    await expect.poll(() => page.locator('#plot-about').textContent()).toMatch(/^Temperature of chip over time/);
    await page.goBack();
    await expect.poll(() => page.locator('#result [aria-label="Runs"] tbody tr').count()).toBe(3);
    expect(await page.locator('#run-larch-fast').isChecked()).toBe(false);
    await page.goForward();
    await page.goForward();
    await expect.poll(() => page.locator('#plot-about').textContent()).toContain('and clock over time');
    await expect.poll(() => drawing(page)).toBe(picture);
    await first.context.close();
  });
});

describe('an address', () => {
  test('loads the runs that it names, and no other', async () => {
    const { page, context, asked } = await open(TWO);
    await drawing(page);
    const files = [...asked].filter((path) => path.startsWith('runs/'));
    expect(files.sort()).toEqual(
      ['fast', 'rated'].flatMap((run) => ['figures', 'series'].map((file) => `runs/larch-${run}/${file}.json`)),
    );
    await context.close();
  });

  test('opens a rise in a window, in other units, without a shift of what is read', async () => {
    const { page, context } = await open(`${TWO}&reference=larch-fast&show=temperature+clock&as=rise&units=MHz&from=-60&to=1800`);
    await drawing(page);
    expect(await page.locator('#plot-title').textContent()).toContain('Rise over ambient');
    const texts = await page.locator('#drawn text').allTextContents();
    expect(texts).toEqual(expect.arrayContaining(['Rise over ambient (K)', 'Clock (MHz)', '30']));
    expect(texts).not.toContain('50');
    expect(await page.locator('#from').inputValue()).toBe('-1');
    expect(await page.locator('#to').inputValue()).toBe('30');
    expect(await page.locator('#reference').inputValue()).toBe('larch-fast');
    expect(await page.locator('#said').textContent()).toBe('2 runs side by side; Fast is the reference.');
    await context.close();
  });

  test('that makes no sense in places is told so, and shows the rest', async () => {
    const { page, context } = await open(`${TWO}&colour=red&as=felt&from=soon`);
    await drawing(page);
    expect(await page.locator('#told p').allTextContents()).toEqual([
      '“colour” is not part of an address of this page.',
      '“as=felt” is none of absolute, rise: temperatures stand as they were read.',
      '“from=soon” is not a number of seconds.',
    ]);
    await context.close();
  });

  test('that names a run that is gone says so, shows the rest, and offers the record copies that hold it', async () => {
    const index = join(built.project.root, 'dist/record-copies/index.json');
    const copies = [
      { id: 'a1', title: 'Withdrawn pair', path: 'record-copies/a1/', runs: ['larch-gone', 'larch-fast'] },
      { id: 'b2', title: 'Others', path: 'record-copies/b2/', runs: ['larch-rated'] },
    ];
    writeFileSync(index, JSON.stringify({ format: 1, copies }));
    const { page, context } = await open(`${TWO}+larch-gone`);
    await drawing(page);
    await expect.poll(() => page.locator('#gone').textContent()).toContain('larch-gone is not among the published runs.');
    expect(await page.locator('#gone li').allTextContents()).toEqual(['Withdrawn pair, with larch-gone']);
    expect(await page.locator('#gone a').getAttribute('href')).toBe('/record-copies/a1/');
    expect(await page.locator('#result [aria-label="Runs"] tbody tr').count()).toBe(2);
    await page.getByRole('button', { name: 'Leave it out' }).click();
    await expect.poll(() => page.locator('#gone').isHidden()).toBe(true);
    expect(page.url()).toBe(`${built.served.address}compare/${TWO}`);
    await context.close();
  });

  test('of a run whose file is damaged says which and how, and shows the rest', async () => {
    const series = join(built.project.root, 'dist/runs/larch-quick/series.json');
    const text = readFileSync(series);
    writeFileSync(series, text.subarray(0, 100));
    const { page, context } = await open(`${TWO}+larch-quick`);
    await drawing(page);
    expect(await page.locator('#told p').allTextContents()).toEqual([
      'larch-quick cannot be shown: in its series.json it is not JSON.',
    ]);
    expect(await page.locator('#result [aria-label="Runs"] tbody tr').count()).toBe(2);
    writeFileSync(series, text);
    await context.close();
  });
});

describe('the page', () => {
  test.each(['light', 'dark'] as const)('has nothing that axe finds, in %s', async (colorScheme) => {
    const { page, context } = await open(TWO, { colorScheme, bypassCSP: true });
    await drawing(page);
    for (const details of await page.locator('details').all()) await details.evaluate((each) => each.setAttribute('open', ''));
    expect(await violationsIn(page)).toEqual([]);
    await context.close();
  });

  test.each([360, 1280])('is not wider than its window of %i px, and nothing of it moves while it loads', async (width) => {
    const { page, context } = await open('', { viewport: { width, height: 800 } });
    await page.addInitScript(`
      window.shifted = 0;
      new PerformanceObserver((list) => { for (const entry of list.getEntries()) window.shifted += entry.value; })
        .observe({ type: 'layout-shift', buffered: true });`);
    await page.goto(`${built.served.address}compare/?runs=${RUNS.join('+')}&show=temperature+clock`);
    await drawing(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    expect(await page.evaluate('window.shifted')).toBeLessThan(0.01);
    const [space, picture] = await page.evaluate(() => {
      const place = document.querySelector('#drawn')!;
      return [place.clientHeight, place.firstElementChild!.clientHeight];
    });
    expect(Math.abs(space! - picture!)).toBeLessThan(2);
    await context.close();
  });

  test('without scripting says what it does, and leads to every run and to the comparisons', async () => {
    const { page, context } = await open(TWO, { javaScriptEnabled: false });
    expect(await page.locator('noscript').textContent()).toContain('needs scripting');
    expect(await page.locator('input:visible, select:visible, button:visible').count()).toBe(0);
    const links = await page.locator('main a').evaluateAll((all) => all.map((link) => link.getAttribute('href')));
    expect(links).toEqual(expect.arrayContaining(['/comparisons/larch-steps/', ...RUNS.map((id) => `/runs/${id}/`)]));
    await context.close();
  });

  test('is led to by runs and comparisons, with the address filled in', async () => {
    const { page, context } = await open('');
    const target = (path: string) =>
      page
        .goto(built.served.address + path)
        .then(() => page.getByRole('link', { name: 'Compare with other runs' }).getAttribute('href'));
    expect(await target('runs/larch-fast/')).toBe('/compare/?runs=larch-fast');
    expect(await target('comparisons/larch-steps/')).toBe(`/compare/?runs=${RUNS.join('+')}`);
    await context.close();
  });

  test('leaves the console silent: nothing broke the policy, nothing failed', () => {
    expect(said).toEqual([]);
  });
});

describe('tables of a comparison by keyboard', () => {
  test('are one stop each, in which arrow keys lead from link to link; without scripting each link is a stop', async () => {
    const { page, context } = await open('');
    await page.goto(`${built.served.address}comparisons/larch-steps/`, { waitUntil: 'networkidle' });
    const many = page.locator('.compared table').first().locator('tbody a');
    expect(await many.count()).toBeGreaterThan(20);
    const stops = () => many.evaluateAll((links) => links.filter((link) => (link as HTMLElement).tabIndex === 0).length);
    expect(await stops()).toBe(1);
    const at = () => page.evaluate(() => document.activeElement?.getAttribute('href') ?? '');
    await many.first().focus();
    expect(await at()).toBe('/method/#speedup');
    const went: string[] = [];
    for (const key of ['ArrowRight', 'ArrowDown', 'ArrowUp', 'ArrowLeft', 'ArrowLeft', 'End', 'ArrowDown', 'Home']) {
      await page.keyboard.press(key);
      went.push(await at());
    }
    expect(went).toEqual([
      '#speedup.brisk',
      '#clock_ratio.brisk',
      '#speedup.brisk',
      '/method/#speedup',
      '/method/#speedup',
      '#clock_delta.fast',
      '#clock_delta.fast',
      '/method/#speedup',
    ]);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Tab');
    expect(await many.evaluateAll((links) => links.includes(document.activeElement as HTMLElement))).toBe(false);
    await page.keyboard.press('Shift+Tab');
    expect(await at()).toBe('/method/#clock_ratio');
    expect(await stops()).toBe(1);
    await context.close();
    const without = await open('', { javaScriptEnabled: false });
    await without.page.goto(`${built.served.address}comparisons/larch-steps/`);
    expect(await without.page.locator('.compared tbody a[tabindex]').count()).toBe(0);
    await without.context.close();
  });

  test('on paper stand below plots of which each has its words within its own room', async () => {
    const { page, context } = await open('');
    await page.emulateMedia({ media: 'print' });
    await page.goto(`${built.served.address}comparisons/larch-steps/`);
    const below = await page.locator('.plot:has(.about)').evaluateAll((plots) => {
      const bottom = (element: Element) => element.getBoundingClientRect().bottom;
      return plots.map((plot) => bottom(plot.querySelector('.about')!) - bottom(plot));
    });
    expect(below.length).toBeGreaterThan(3);
    expect(Math.max(...below)).toBeLessThan(1);
    await context.close();
  });

  test('on a phone show every column of a row, and none scrolls', async () => {
    const { page, context } = await open('', { viewport: { width: 360, height: 800 } });
    await page.goto(`${built.served.address}comparisons/larch-steps/`);
    const wider = await page
      .locator('.compared')
      .evaluateAll((all) =>
        all.filter((each) => each.scrollWidth > each.clientWidth).map((each) => each.getAttribute('aria-label')),
      );
    expect(wider).toEqual([]);
    const row = page.locator('.compared tbody tr').first().locator('td');
    const labels = await row.evaluateAll((cells) => cells.map((cell) => getComputedStyle(cell, '::before').content));
    expect(labels).toEqual(['"brisk"', '"quick"', '"fast"']);
    await context.close();
  });
});
