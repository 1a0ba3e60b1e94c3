import { join } from 'node:path';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import webvtt from 'webvtt-parser';
import type { StillsModel } from '../../src/compute/models/stills.ts';
import { readManifest } from '../../src/compute/project/manifest.ts';
import { openStore } from '../../src/compute/store/store.ts';
import { readSubtitles } from '../../src/words/script/subtitles.ts';
import { demonstrationSite } from './built-site.ts';
import { copyProject, tree } from './project.ts';

const SCRIPT = 'scripts/a-clock-it-cannot-keep/';
const NOTE = 'notes/a-clock-it-cannot-keep/';

const built = demonstrationSite();
let site: Map<string, Buffer>;

beforeAll(() => {
  site = tree(join(built.root, 'dist'));
});

/** Opens a page in a fresh profile, hands it to `look`, and fails on anything that the console was told. */
async function open(path: string, options: BrowserContextOptions, look: (page: Page) => Promise<void>): Promise<void> {
  const context = await built.browser.newContext({ viewport: { width: 1280, height: 800 }, ...options });
  const page = await context.newPage();
  const told: string[] = [];
  page.on('console', (message) => told.push(message.text()));
  page.on('pageerror', (thrown) => told.push(thrown.message));
  await page.goto(built.served.address + path, { waitUntil: 'networkidle' });
  await look(page);
  expect(told, path).toEqual([]);
  await context.close();
}

const place = (page: Page) => page.evaluate('scrollY') as Promise<number>;

describe('the page of a script', () => {
  it('says numbers in words and prints them beside what holds them', async () => {
    await open(SCRIPT, {}, async (page) => {
      const text = await page.locator('.script').innerText();
      expect(text).toMatch(/settles at [a-z-]+ point [a-z]+ degrees/);
      const held = page.locator('.script .said a.held').filter({ hasText: /point [a-z]+ degrees/ });
      await held.first().click();
      const note = await page.locator('.held-tip').innerText();
      expect(note).toMatch(/^[\d.]+\s°C /);
      expect(note).toContain(`said “${await held.first().innerText()}”`);
    });
  });

  it('has a length for each section that adds up', async () => {
    await open(SCRIPT, {}, async (page) => {
      const rows = await page.locator('.length tbody tr').allInnerTexts();
      expect(rows.length).toBeGreaterThan(3);
      const total = rows.reduce((sum, row) => sum + Number(row.split('\t').at(-1)), 0);
      expect(await page.locator('.length caption').innerText()).toMatch(new RegExp(` for ${total} words$`));
      expect(await page.locator('.basis').innerText()).toContain('145 words per minute');
    });
  });

  it('prints as a PDF of several pages, without what only works on a screen', async () => {
    await open(SCRIPT, {}, async (page) => {
      const pdf = await page.pdf({ format: 'A4' });
      expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
      const pages = pdf.toString('latin1').match(/\/Type\s*\/Page\b/g) ?? [];
      expect(pages.length).toBeGreaterThan(2);
      await page.emulateMedia({ media: 'print' });
      expect(await page.locator('.beside').first().isVisible()).toBe(false);
      expect(await page.locator('.cue').first().isVisible()).toBe(true);
      expect(await page.evaluate('getComputedStyle(document.querySelector("a.held"), "::after").content')).toContain('1');
    });
  });

  it('folds what its cautions rest on, also without scripting, and never the risk; on paper all of it is open', async () => {
    await open(SCRIPT, { javaScriptEnabled: false }, async (page) => {
      const cautions = page.locator('.cautions');
      const found = cautions.getByText('The load lasted 60 min (rated).');
      expect(await cautions.getByText('fire and burn hazard').isVisible()).toBe(true);
      expect(await found.isVisible()).toBe(false);
      await cautions.locator('summary').last().press('Enter');
      expect(await found.isVisible()).toBe(true);
    });
    await open(SCRIPT, {}, async (page) => {
      await page.emulateMedia({ media: 'print' });
      const sentences = page.locator('.cautions details li');
      expect(await sentences.count()).toBeGreaterThan(5);
      for (const sentence of await sentences.all()) expect(await sentence.isVisible()).toBe(true);
    });
  });

  it('has plain text and WebVTT beside it, which the validator passes', () => {
    const text = site.get(`${SCRIPT}script.txt`)!.toString('utf8');
    expect(text).toContain('invented');
    expect(text).toMatch(/settles at [a-z-]+ point [a-z]+ degrees/);
    const { cues, errors } = new webvtt.WebVTTParser().parse(site.get(`${SCRIPT}script.vtt`)!.toString('utf8'), 'subtitles');
    expect(errors).toEqual([]);
    expect(cues.length).toBeGreaterThan(30);
    expect(cues.at(-1)!.endTime).toBeGreaterThan(120);
    expect(cues.at(-1)!.endTime).toBeLessThan(180);
  });

  it('is linked from its note and from home, and links to its note', async () => {
    for (const path of ['', NOTE]) {
      await open(path, {}, async (page) => expect(await page.locator(`main a[href="/${SCRIPT}"]`).count(), path).toBe(1));
    }
    await open(SCRIPT, {}, async (page) => expect(await page.locator(`.beside a[href="/${NOTE}"]`).count()).toBe(1));
  });

  it('takes its times from the subtitles of the finished video', () => {
    const slower = site
      .get(`${SCRIPT}script.vtt`)!
      .toString('utf8')
      .replace(/(\d\d):(\d\d):(\d\d)\.(\d{3})/g, (_, h, m, s, f) => {
        const twice = 2 * (Number(h) * 3600 + Number(m) * 60 + Number(s) + Number(f) / 1000);
        const part = (value: number, width = 2) => String(value).padStart(width, '0');
        return `00:${part(Math.floor(twice / 60))}:${part(Math.floor(twice) % 60)}.${part(Math.round((twice % 1) * 1000) % 1000, 3)}`;
      });
    const other = copyProject('subtitles');
    try {
      other.write('data/larch-2/final.vtt', slower);
      other.edit(`content/${SCRIPT.slice(0, -1)}.md`, 'pace: 145', 'subtitles: larch-2/final.vtt\npace: 145');
      expect(other.run('build').code).toBe(0);
      const dist = tree(join(other.root, 'dist'));
      const html = dist.get(`${SCRIPT}index.html`)!.toString('utf8');
      expect(html).toContain('data/larch-2/final.vtt');
      const times = (page: string) => [...page.matchAll(/class="due">(\d+):(\d+)</g)].map(([, m, s]) => Number(m) * 60 + Number(s));
      const before = times(site.get(`${SCRIPT}index.html`)!.toString('utf8'));
      const after = times(html);
      expect(before.length).toBeGreaterThan(3);
      for (const [index, time] of after.entries()) expect(Math.abs(time - 2 * before[index]!)).toBeLessThanOrEqual(3);
      other.write('data/larch-2/final.vtt', slower.replaceAll('00:00:', '00:01:'));
      expect(other.run('check').code, 'a changed subtitle file is read again').toBe(0);
    } finally {
      other.remove();
    }
  });
});

describe('the ledger', () => {
  it.each([NOTE, SCRIPT])('of %s lists every number, linked there and back', async (path) => {
    const { entries } = JSON.parse(site.get(`${path}ledger.json`)!.toString('utf8')) as {
      entries: { id: string; shown: string; kind: string }[];
    };
    await open(`${path}ledger/`, {}, async (page) => {
      expect(await page.locator('.ledger > li .shown').allInnerTexts()).toEqual(entries.map(({ shown }) => shown));
      const inText = entries.filter(({ kind }) => kind !== 'highlight').length;
      const links = page.locator('.ledger .shown a:not(.permalink)');
      expect(await links.count()).toBe(inText);
      await links.nth(4).click();
      const { id, shown } = entries[4]!;
      expect(page.url()).toBe(`${built.served.address}${path}#${id}`);
      await page.waitForSelector(`a.held[id="${id}"]:target`);
      await page.locator(`a.held[id="${id}"]`).click();
      await page.locator('.held-tip a.row').click();
      const row = page.locator(`li[id="${id}"]:target`);
      await row.waitFor();
      expect(page.url()).toBe(`${built.served.address}${path}ledger/#${id}`);
      expect(await row.locator('.shown').innerText()).toBe(shown);
      expect(await row.innerText()).toMatch(/before rounding: .*(data|content)\/.*:\d+:\d+/s);
    });
  });
});

describe('the prompter, by keyboard alone', () => {
  const path = `${SCRIPT}prompter/`;

  it('is the text alone with scripting off, from its head on', async () => {
    await open(path, { javaScriptEnabled: false }, async (page) => {
      expect(await page.locator('#panel').isVisible()).toBe(false);
      expect(await page.locator('main p').last().innerText()).toContain('the dull one');
      expect((await page.locator('main h1').boundingBox())?.y).toBeLessThan(250);
    });
  });

  it('starts, stops, changes its speed, goes by sections, mirrors and goes back', async () => {
    await open(path, {}, async (page) => {
      expect(await place(page)).toBe(0);
      await page.keyboard.press('Space');
      await expect.poll(() => place(page)).toBeGreaterThan(20);
      await page.keyboard.press('Space');
      const stopped = await place(page);
      await page.waitForTimeout(300);
      expect(await place(page)).toBe(stopped);

      const speed = page.locator('#speed');
      expect(await speed.innerText()).toBe('145 words a minute');
      await page.keyboard.press('ArrowUp');
      await page.keyboard.press('ArrowUp');
      expect(await speed.innerText()).toBe('155 words a minute');
      await page.keyboard.press('ArrowDown');
      expect(await speed.innerText()).toBe('150 words a minute');

      await page.keyboard.press('ArrowRight');
      const first = await place(page);
      expect(first).toBeGreaterThan(stopped);
      const heading = (await page.locator('h2').first().boundingBox())!;
      expect(Math.abs(heading.y - 800 * 0.33)).toBeLessThan(3);
      await page.keyboard.press('ArrowRight');
      expect(await place(page)).toBeGreaterThan(first);
      await page.keyboard.press('ArrowLeft');
      expect(await place(page)).toBe(first);
      await page.keyboard.press('Home');
      expect(await place(page)).toBe(0);

      await page.keyboard.press('m');
      expect(await page.evaluate('new DOMMatrix(getComputedStyle(document.querySelector("main")).transform).a')).toBe(-1);
      await page.keyboard.press('m');
      expect(await page.evaluate('getComputedStyle(document.querySelector("main")).transform')).toBe('none');

      await page.keyboard.press('Escape');
      await page.waitForURL(built.served.address + SCRIPT);
    });
  });

  it('shows its keys, and reaches each of them with the tab key too', async () => {
    await open(path, {}, async (page) => {
      expect(await page.locator('#panel kbd').allInnerTexts()).toEqual(['Space', '↓', '↑', '←', '→', 'Home', 'M', 'Esc']);
      await page.locator('[data-do="faster"]').focus();
      await page.keyboard.press('Space');
      expect(await page.locator('#speed').innerText()).toBe('150 words a minute');
    });
  });

  it('remembers its place for the session of the tab only', async () => {
    await open(path, {}, async (page) => {
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('ArrowUp');
      // Not pixels: the second time the page may have its font, which the first time came too late.
      const heading = async () => (await page.locator('h2').nth(1).boundingBox())!.y;
      const before = await heading();
      await page.reload({ waitUntil: 'networkidle' });
      await expect.poll(async () => Math.abs((await heading()) - before)).toBeLessThanOrEqual(3);
      expect(await page.locator('#speed').innerText()).toBe('150 words a minute');
      const other = await page.context().newPage();
      await other.goto(page.url(), { waitUntil: 'networkidle' });
      expect(await place(other)).toBe(0);
      expect(await page.evaluate('localStorage.length')).toBe(0);
    });
  });

  it('keeps the words at the reading line where the window becomes another', async () => {
    await open(path, {}, async (page) => {
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('ArrowRight');
      for (const [width, height] of [
        [1280, 500],
        [700, 900],
        [1280, 800],
      ] as const) {
        await page.setViewportSize({ width, height });
        const y = async () => (await page.locator('h2').nth(1).boundingBox())!.y;
        await expect
          .poll(async () => Math.abs((await y()) - height * 0.33), { message: `${width} by ${height}` })
          .toBeLessThanOrEqual(3);
      }
    });
  });

  it('asks for nothing once it is loaded, and works without a network', async () => {
    await open(path, {}, async (page) => {
      const asked: string[] = [];
      page.on('request', (request) => asked.push(request.url()));
      await page.context().setOffline(true);
      await page.keyboard.press('Space');
      await expect.poll(() => place(page)).toBeGreaterThan(20);
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('m');
      await page.keyboard.press('Space');
      expect(asked).toEqual([]);
    });
  });

  it('goes by steps where less motion is wished', async () => {
    await open(path, { reducedMotion: 'reduce' }, async (page) => {
      for (let press = 0; press < 60; press += 1) await page.keyboard.press('ArrowUp');
      expect(await page.locator('#speed').innerText()).toBe('400 words a minute');
      await page.evaluate('window.places = new Set(); addEventListener("scroll", () => places.add(Math.round(scrollY)))');
      await page.keyboard.press('Space');
      await expect.poll(() => page.evaluate('places.size')).toBeGreaterThan(1);
      await page.keyboard.press('Space');
      const [one, two] = (await page.evaluate('[...places]')) as number[];
      const line = (await page.evaluate('parseFloat(getComputedStyle(document.getElementById("text")).lineHeight)')) as number;
      const step = Math.floor((800 * 0.4) / line) * line;
      expect(Math.abs(one! - step)).toBeLessThanOrEqual(1);
      expect(Math.abs(two! - 2 * step)).toBeLessThanOrEqual(1);
    });
  });
});

describe('what goes with the video of a script', () => {
  it('are pictures whose numbers are those of the ledgers, and whose plots say what the pages say of them', () => {
    const store = openStore(built.root);
    const blob = readManifest(built.root, 'site')!.stills['a-clock-it-cannot-keep']!;
    const { pictures } = JSON.parse(new TextDecoder().decode(store.bytes(blob))) as StillsModel;
    const ledgers = [SCRIPT, NOTE].flatMap((page) => {
      const { entries } = JSON.parse(site.get(`${page}ledger.json`)!.toString('utf8')) as { entries: { shown: string }[] };
      return entries.map(({ shown }) => shown);
    });
    const numbers = pictures.flatMap(({ shows }) => {
      if (shows.kind === 'number') return [shows.shown];
      return shows.kind === 'table' ? shows.rows.flatMap((row) => row.slice(1)) : [];
    });
    expect(numbers.length).toBeGreaterThan(8);
    for (const number of numbers) expect(ledgers).toContain(number);
    const pages = [SCRIPT, NOTE].map((page) => site.get(`${page}index.html`)!.toString('utf8').replaceAll('&#x27;', "'")).join();
    const plots = pictures.flatMap(({ shows }) => (shows.kind === 'plot' ? shows.stills : []));
    expect(plots.length).toBeGreaterThan(2);
    for (const { alt } of plots) expect(pages).toContain(alt);
  });

  it('is the text below it, whose chapters begin when the sections do, and subtitles in two forms', () => {
    const video = site.get(`${SCRIPT}video.txt`)!.toString('utf8');
    const page = site.get(`${SCRIPT}index.html`)!.toString('utf8');
    const sections = [
      ...page.matchAll(/<th scope="row">(?:<a href="#[^"]*">)?([^<]+)(?:<\/a>)?<\/th>\s*<td class="number">([\d:]+)<\/td>/g),
    ];
    expect(sections.length).toBeGreaterThan(3);
    for (const [, title, from] of sections.slice(1)) expect(video).toContain(`\n${from} ${title}\n`);
    expect(video).toMatch(/\nChapters\n0:00 Opening\n/);
    expect(video).toContain(`https://bench.example/${NOTE}`);
    expect(video).toContain('\nCautions\n- ');
    const [vtt, srt] = ['script.vtt', 'script.srt'].map((name) => readSubtitles(site.get(SCRIPT + name)!.toString('utf8')).cues);
    expect(srt).toEqual(vtt);
  });
});
