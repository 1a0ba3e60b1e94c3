import { readFileSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { violationsIn } from './accessibility.ts';
import { openBrowser } from './browser.ts';
import { amissIn } from './fragments.ts';
import { copyProject, type TestProject, tree } from './project.ts';
import { type Served, serve } from './server.ts';

const NOTE = 'notes/a-clock-it-cannot-keep/';
const SOURCE = 'content/notes/a-clock-it-cannot-keep.md';
const OLD = 'runs/larch-quick/';
const NEW = 'runs/larch-swift/';
/** Beginnings of paragraphs with held numbers, which trade places. */
const PARAGRAPHS = ['At its rated setting the device climbs', 'For :stated[nearly twenty minutes]'] as const;

interface Entry {
  readonly id: string;
  readonly kind: string;
  readonly expression: string;
  readonly shown: string;
}

let project: TestProject;
let served: Served;
let browser: Browser;
let before: Map<string, Buffer>;
let entries: Entry[];
/** What a check says of the renamed run before it says where it was. */
let vanishing: string;

/** The demonstration as it was built and published; then its run is renamed, paragraphs of its note are re-ordered, and another build. */
beforeAll(async () => {
  project = copyProject('permalinks');
  const dist = join(project.root, 'dist');
  before = tree(dist);
  entries = ledger();
  reorder();
  rename();
  vanishing = project.run('check').err;
  project.edit('content/runs/larch-swift.md', 'setup: ', `was: ${OLD}\nsetup: `);
  const built = project.run('build');
  expect(built.err).not.toContain(': error:');
  expect(built.code).toBe(0);
  served = await serve(dist);
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
  project?.remove();
});

function ledger(): Entry[] {
  return (JSON.parse(project.read(`dist/${NOTE}ledger.json`)) as { entries: Entry[] }).entries;
}

function reorder(): void {
  const paragraphs = project.read(SOURCE).split('\n\n');
  const [first, second] = PARAGRAPHS.map((words) => paragraphs.findIndex((each) => each.startsWith(words))) as [number, number];
  [paragraphs[first], paragraphs[second]] = [paragraphs[second]!, paragraphs[first]!];
  project.write(SOURCE, paragraphs.join('\n\n'));
}

function rename(): void {
  const at = (id: string) => join(project.root, 'content', 'runs', `${id}.md`);
  renameSync(at('larch-quick'), at('larch-swift'));
  for (const file of [SOURCE, SOURCE.replace('notes', 'scripts'), 'content/comparisons/larch-steps.md'])
    project.edit(file, 'quick: larch-quick', 'quick: larch-swift');
}

async function open(
  path: string,
  options: Parameters<Browser['newContext']>[0] = {},
): Promise<{ context: BrowserContext; page: Page }> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  await page.goto(served.address + path);
  return { context, page };
}

describe('a held number', () => {
  it('keeps its address while paragraphs trade places: in the page, its ledger, and for programs', async () => {
    const now = ledger();
    expect(now.map(({ id }) => id)).not.toEqual(entries.map(({ id }) => id));
    const told = ({ kind, expression, shown }: Entry) => `${kind} ${expression} ${shown}`;
    expect(new Map(now.map((entry) => [entry.id, told(entry)]))).toEqual(new Map(entries.map((entry) => [entry.id, told(entry)])));
    const { context, page } = await open(NOTE);
    const inText = entries.filter(({ kind }) => kind !== 'highlight');
    const shown = await page.evaluate(
      (ids) => ids.map((id) => document.getElementById(id)?.textContent),
      inText.map(({ id }) => id),
    );
    expect(shown).toEqual(inText.map((entry) => entry.shown));
    await page.goto(`${served.address}${NOTE}ledger/`);
    const rows = await page.evaluate(
      (ids) => ids.map((id) => document.querySelector(`li[id="${id}"] .shown`)?.textContent?.trim()),
      entries.map(({ id }) => id),
    );
    expect(rows).toEqual(entries.map((entry) => entry.shown));
    await context.close();
  });

  it('has an address that a browser follows without scripting and does not escape', async () => {
    const moved = entries.find(({ expression }) => expression === 'fast.mean_clock')!;
    const { context, page } = await open(`${NOTE}#${moved.id}`, { javaScriptEnabled: false });
    expect(page.url()).toBe(`${served.address}${NOTE}#${moved.id}`);
    expect(await page.locator('a.held:target').innerText()).toBe(moved.shown);
    await context.close();
  });

  it('is still found by an address from before its sentence was written anew', async () => {
    const first = ledger().find(({ expression }) => expression === 'fast.mean_clock')!;
    const { context, page } = await open(`${NOTE}#fast.mean_clock-zzzzz`);
    await expect.poll(() => page.url()).toBe(`${served.address}${NOTE}#${first.id}`);
    await context.close();
  });
});

describe('a site in which something was renamed', () => {
  it('is not built until the published address leads on', () => {
    expect(vanishing).toContain(`error: the published address ${OLD} would vanish [vanished-address]`);
    expect(vanishing).toContain(`write \`was: ${OLD}\` into the front matter of the run`);
  });

  it('has every id once, and a target for every address with a fragment', () => {
    expect(amissIn(join(project.root, 'dist'))).toMatchObject({ twice: [], targetless: [] });
  });

  it('leads on from the former page, without scripting, and tells search engines where it is now', async () => {
    const { context, page } = await open(OLD, { javaScriptEnabled: false });
    await page.waitForURL(served.address + NEW);
    expect(await page.locator('h1').innerText()).toBe('Quick setting, hour soak');
    await context.close();
    const html = project.read(`dist/${OLD}index.html`);
    expect(html).toContain('<meta name="robots" content="noindex">');
    expect(html).toContain('<link rel="canonical" href="../../runs/larch-swift/">');
    expect(html).not.toMatch(/(?:href|url)="?\//);
    expect(project.read('dist/sitemap.xml')).not.toContain(OLD);
  });

  it('takes the address of a figure along to the page that it leads on to', async () => {
    const { context, page } = await open(`${OLD}#peak_temperature`);
    await page.waitForURL(`${served.address}${NEW}#peak_temperature`);
    await page.locator(':target').waitFor();
    await context.close();
  });

  it('keeps every file of the run at its former address, with the bytes that it has now', () => {
    const files = [...before.keys()].filter((path) => path.startsWith(OLD) && !path.endsWith('.html'));
    expect(files).toContain(`${OLD}figures.json`);
    expect(files).toContain(`${OLD}data/larch-quick-clean.csv`);
    const now = tree(join(project.root, 'dist'));
    for (const path of files) {
      const moved = path.replace(OLD, NEW).replace('larch-quick-clean', 'larch-swift-clean');
      expect(now.get(path)?.equals(now.get(moved)!), path).toBe(true);
    }
    const clean = before.get(`${OLD}data/larch-quick-clean.csv`)!;
    expect(now.get(`${NEW}data/larch-swift-clean.csv`)!.equals(clean)).toBe(true);
  });

  it('opens comparisons of the reader’s own under the former id, and says so', async () => {
    const { context, page } = await open('compare/?runs=larch-quick+larch-rated&reference=larch-quick');
    await expect.poll(() => page.locator('#result [aria-label="Runs"] tbody tr').count()).toBe(2);
    expect(await page.locator('#told').innerText()).toBe('The run larch-quick is called larch-swift now.');
    expect(await page.locator('#gone').isHidden()).toBe(true);
    expect(await page.locator('#reference').inputValue()).toBe('larch-swift');
    await context.close();
    const index = JSON.parse(project.read('dist/runs/index.json')) as { runs: { id: string; was?: string[] }[] };
    expect(index.runs.flatMap(({ id, was = [] }) => was.map((former) => `${former} ${id}`))).toEqual(['larch-quick larch-swift']);
  });

  it('is compared with a record copy by its former id: what changed is what it is called', () => {
    const copy = [...before.keys()].find((path) => /^record-copies\/[^/]+\/index\.html$/.test(path))!;
    const [own = '', since = ''] = readFileSync(join(project.root, 'dist', copy), 'utf8').split('<section id="since"');
    expect(own.split('<div id="as-recorded">')[1]).toBe(
      before.get(copy)!.toString('utf8').split('<section id="since"')[0]!.split('<div id="as-recorded">')[1],
    );
    expect(since).toMatch(/larch-quick.*larch-swift/s);
    expect(since).not.toContain('no longer');
  });
});

describe('the link beside a title, a figure, a plot', () => {
  const permissions = ['clipboard-read', 'clipboard-write'];
  const name = /^Address of peak temperature, board/;

  it('copies the whole address from the keyboard, and says so', async () => {
    const { context, page } = await open(NEW, { permissions });
    const link = page.getByRole('link', { name });
    await link.focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.copied').textContent()).toBe('copied');
    const address = `${served.address}${NEW}#peak_temperature.board`;
    expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(address);
    expect(page.url()).toBe(address);
    expect(await page.locator('tr:target').innerText()).toContain('peak temperature');
    await page.getByRole('link', { name: 'Address of Quick setting, hour soak' }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => page.evaluate(() => navigator.clipboard.readText())).toBe(served.address + NEW);
    expect(page.url(), 'nothing is loaded anew').toBe(address);
    await context.close();
  });

  it('copies that of a held number from what the number opens', async () => {
    const { context, page } = await open(NOTE, { permissions });
    const held = page.locator('.words a.held').first();
    await held.focus();
    await page.locator('.held-tip a.permalink').focus();
    await page.keyboard.press('Enter');
    const address = `${served.address}${NOTE}#${await held.getAttribute('id')}`;
    await expect.poll(() => page.evaluate(() => navigator.clipboard.readText())).toBe(address);
    await context.close();
  });

  it('is followed where the browser refuses to copy, and without scripting', async () => {
    const { context, page } = await open(NEW);
    await page.evaluate("navigator.clipboard.writeText = () => Promise.reject(new Error('refused'))");
    await page.getByRole('link', { name }).focus();
    await page.keyboard.press('Enter');
    await page.waitForURL(`${served.address}${NEW}#peak_temperature.board`);
    await page.getByRole('link', { name: 'Address of Quick setting, hour soak' }).focus();
    await page.keyboard.press('Enter');
    await page.waitForURL(served.address + NEW);
    expect(await page.locator('.copied').textContent()).toBe('');
    await context.close();
    const plain = await open(NEW, { javaScriptEnabled: false });
    await plain.page.getByRole('link', { name }).focus();
    await plain.page.keyboard.press('Enter');
    await plain.page.waitForURL(`${served.address}${NEW}#peak_temperature.board`);
    await plain.context.close();
  });

  it('is seen when its row is pointed at, always where nothing can be, never on paper', async () => {
    const opacity = (page: Page) => page.getByRole('link', { name }).evaluate((link) => getComputedStyle(link).opacity);
    const { context, page } = await open(NEW);
    expect(await opacity(page)).toBe('0');
    await page.locator('tr[id="peak_temperature.board"]').hover();
    await expect.poll(() => opacity(page)).toBe('1');
    await page.emulateMedia({ media: 'print' });
    expect(
      await page.locator('a.permalink').evaluateAll((links) => links.every((link) => link.getClientRects().length === 0)),
    ).toBe(true);
    await context.close();
    const touched = await open(NEW, { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true });
    expect(await opacity(touched.page)).toBe('1');
    await touched.context.close();
  });

  it('has nothing that axe finds where it is always seen', async () => {
    const touch = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true, bypassCSP: true };
    const { context, page } = await open(NEW, touch);
    expect(await page.locator('a.permalink').count()).toBeGreaterThan(10);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await violationsIn(page, 'a.permalink'), colorScheme).toEqual([]);
    }
    await context.close();
  });
});
