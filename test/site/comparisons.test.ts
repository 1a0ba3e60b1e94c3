import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { isPresent } from '../../src/figures/figure.ts';
import { isUnreadable, readFiguresJson } from '../../src/figures/read-figures-json.ts';
import { printQuantity, printUncertainty } from '../../src/quantities/print.ts';
import { printWithUncertainty } from '../../src/quantities/print-with-uncertainty.ts';
import { builtSite } from './built-site.ts';
import { tree } from './project.ts';

const PATH = 'comparisons/larch-steps/';
const WARNING =
  'Firmware: 1.8 in rated, brisk and quick; 1.9 in fast. Firmware sets clocks, voltages, limits and fans by its own rules: a difference may be its doing.';

/** In no published note. */
const UNREACHED = `---
title: Adderstongue beside the maker's own
runs:
  brisk: larch-brisk
  preview: larch-preview
reference: brisk
---

What Adderstongue does is for later.
`;

const built = builtSite('comparisons', (project) => {
  project.unprotect();
  project.write('content/comparisons/unreached.md', UNREACHED);
});
let site: Map<string, Buffer>;
let page: Page;

beforeAll(async () => {
  site = tree(join(built.project.root, 'dist'));
  const narrow = { javaScriptEnabled: false, viewport: { width: 360, height: 800 } };
  page = await (await built.browser.newContext(narrow)).newPage();
  await page.goto(built.served.address + PATH);
});

function text(path: string): string {
  return site.get(path)!.toString('utf8');
}

describe('the page of a comparison', () => {
  it('is complete with scripting off: words, settings, plots, figures, files', async () => {
    const main = await page.locator('main').innerText();
    expect(main).toContain('The scores were taken after each soak');
    expect(main).toContain(
      'The setting differs in clock and voltage offset; as far as the runs state their conditions, nothing else does.',
    );
    expect(main).toContain('Ambients count as different where');
    for (const digest of text(`${PATH}index.html`).match(/[0-9a-f]{64}/g)!) expect(main).toContain(digest);
    expect(await page.locator('figure.plot').count()).toBe(7);
    for (const plot of await page.locator('figure.plot .narrow svg').all()) expect(await plot.isVisible()).toBe(true);
  });

  it('prints each figure as figures.json has it, where its anchor stands', async () => {
    const figures = readFiguresJson(text(`${PATH}figures.json`));
    if (isUnreadable(figures)) throw new Error(figures.unreadable);
    expect(figures.size).toBeGreaterThan(80);
    // What could have been told stands beside the figure that it is of.
    for (const [address, figure] of [...figures].filter(([, { of }]) => of?.figure === undefined)) {
      if (!isPresent(figure)) throw new Error(`${address} is absent in the demonstration`);
      const own = figure.interval === undefined ? {} : { interval: figure.interval };
      const found = await page.locator(`[id="${address}"]`).textContent();
      const printed = found!.replaceAll(/\s+/g, ' ');
      const { repeatabilityOnly: _saidOfTheRow, ...quantity } = figure.quantity;
      const inOneText = printWithUncertainty(quantity, own).replaceAll(/\s+/g, ' ');
      const apart = [printQuantity(figure.quantity).text, printUncertainty(figure.quantity, own)];
      const asPrinted = printed.includes(inOneText) ? [inOneText] : apart.map((part) => part.replaceAll(/\s+/g, ' '));
      for (const part of asPrinted) expect(printed, address).toContain(part);
      if (figure.of?.verdict === 'these two runs do not differ') expect(printed, address).toContain('these two runs do not differ');
    }
  });

  it('offers each plot as SVG, PNG and CSV', () => {
    for (const plot of ['temperature', 'rise', 'clock', 'power', 'scaling', 'deltas', 'scores'])
      for (const extension of ['svg', 'png', 'csv']) expect(site.has(`${PATH}plots/${plot}.${extension}`), plot).toBe(true);
  });

  it('keeps what is wide to its own region, and the first column in sight', async () => {
    const phone = page.viewportSize()!;
    await page.setViewportSize({ width: 700, height: phone.height });
    const region = page.locator('.compared').nth(1);
    const caption = region.locator('caption').first();
    expect(await region.evaluate((element) => element.scrollWidth > element.clientWidth)).toBe(true);
    await region.evaluate((element) => element.scrollTo(element.scrollWidth, 0));
    const [box, head] = [(await region.boundingBox())!, (await region.locator('tbody th').first().boundingBox())!];
    expect(head.x).toBeCloseTo(box.x, 0);
    expect(await caption.isVisible()).toBe(true);
    await page.setViewportSize(phone);
  });

  it('is where notes, runs and held numbers lead to, each to an element that is there', () => {
    const ids = new Set([...text(`${PATH}index.html`).matchAll(/ id="([^"]+)"/g)].map(([, id]) => id));
    const pages = [...site]
      .filter(([path]) => path.endsWith('.html'))
      .map(([path, bytes]) => [path, bytes.toString('utf8')] as const);
    const anchors = pages.flatMap(([, html]) =>
      [...html.matchAll(/href="\/comparisons\/larch-steps\/#([^"]+)"/g)].map(([, id]) => id),
    );
    expect(anchors.length).toBeGreaterThan(0);
    for (const id of anchors) expect(ids).toContain(id);
    const leading = pages.filter(([, html]) => html.includes(`href="/${PATH}"`)).map(([path]) => path);
    expect(leading).toEqual(
      expect.arrayContaining([
        'notes/a-clock-it-cannot-keep/index.html',
        ...['rated', 'brisk', 'quick', 'fast'].map((run) => `runs/larch-${run}/index.html`),
      ]),
    );
    expect(leading).not.toContain('runs/larch-second/index.html');
  });
});

describe('a comparison that no published note reaches', () => {
  it('is nowhere in the site, byte by byte', () => {
    for (const [path, bytes] of site) {
      expect(path).not.toContain('unreached');
      for (const secret of ['Adderstongue', 'unreached', 'larch-preview'])
        expect(bytes.includes(secret), `${path}: ${secret}`).toBe(false);
    }
  });
});

describe('the series of a run', () => {
  it('are published for the runs of the site and for no other', () => {
    const series = [...site.keys()].filter((path) => path.endsWith('/series.json'));
    const runs = [...site.keys()].filter((path) => /^runs\/[^/]+\/figures\.json$/.test(path));
    expect(series).toEqual(runs.map((path) => path.replace('figures.json', 'series.json')));
    for (const path of series) expect(text(path)).toMatch(/^\{"format":1,"channels":\[/);
  });
});

describe('a run with another firmware', () => {
  it('is warned of on the page', () => {
    expect(text(`${PATH}index.html`)).not.toContain(WARNING);
    built.project.edit('content/runs/larch-fast.md', 'conditions:\n', 'conditions:\n  firmware: 1.9\n');
    const ran = built.project.run('build');
    expect(ran.err).not.toContain(': error:');
    expect(built.project.read(`dist/${PATH}index.html`)).toContain(WARNING);
  });
});
