/** What charts tell when they are asked: their readings, by keyboard alone; what a figure was made from, by address alone; runs, by their outcome. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { nearest } from '../../src/browser/readout/lines.ts';
import { linesOf } from '../../src/browser/readout/read-lines.ts';
import { demonstrationSite } from './built-site.ts';

const built = demonstrationSite();
const RUN = 'runs/larch-fast/';

describe('the readout of a chart', () => {
  it('tells by keyboard alone what the chart’s own CSV has, and keeps the moment in the address', async () => {
    const page = await built.browser.newPage();
    await page.goto(built.served.address + RUN);
    const chart = page.locator('figure.plot:has(.readout)').first();
    await chart.locator('.readout input').focus();
    for (let i = 0; i < 40; i += 1) await page.keyboard.press('ArrowRight');
    const told = chart.locator('output');
    await expect.poll(() => told.innerText()).toMatch(/^−1 min: /);
    const csv = readFileSync(join(built.root, 'dist', RUN, 'plots', 'trace.csv'), 'utf8');
    const expected = linesOf(csv).map((line) => `${nearest(line, -1, 2)![0]} ${line.unit}`);
    expect(expected.length).toBeGreaterThan(2);
    for (const reading of expected) expect(await told.innerText()).toContain(reading);
    expect(new URL(page.url()).searchParams.get('read')).toBe('plot-trace:-1');
    await page.reload();
    await expect.poll(() => told.innerText()).toMatch(/^−1 min: /);
    await page.close();
  });

  it('gives temperatures in Fahrenheit on every page once that was chosen', async () => {
    const context = await built.browser.newContext();
    const page = await context.newPage();
    const told = page.locator('figure.plot:has(.readout) output').first();
    await page.goto(`${built.served.address}${RUN}?read=plot-trace:30`);
    await expect.poll(() => told.innerText()).toContain('°C');
    await page.getByRole('button', { name: 'in °F' }).first().click();
    await expect.poll(() => told.innerText()).toContain('°F');
    await page.goto(`${built.served.address}runs/larch-rated/?read=plot-trace:30..40`);
    await expect.poll(() => told.innerText()).toMatch(/^30 to 40 min: .* °F to .* °F/);
    await context.close();
  });
});

describe('what a figure was made from', () => {
  it('is shown in the trace by address alone, without scripting', async () => {
    const context = await built.browser.newContext({ javaScriptEnabled: false, viewport: { width: 1280, height: 900 } });
    const page = await context.newPage();
    await page.goto(`${built.served.address}${RUN}#from:mean_clock`);
    expect(await page.locator('.evidence:visible').count()).toBe(1);
    expect(await page.locator('.evidence:visible').innerText()).toContain('mean clock');
    const window = page.locator('.wide .win:visible');
    expect(await window.count()).toBe(1);
    // The load is 60 of the 70 minutes of the log.
    const [shaded, drawn] = [(await window.boundingBox())!, (await page.locator('.plot .wide svg').first().boundingBox())!];
    expect(shaded.width / drawn.width).toBeGreaterThan(0.75);
    await context.close();
  });
});

describe('the search', () => {
  it.each(['throttled', '85.0'])('finds the run that it is true of: %s', async (words) => {
    const page = await built.browser.newPage();
    await page.goto(`${built.served.address}search/?words=${words}`);
    const runs = page.locator('[data-kind="runs"]');
    await expect.poll(() => runs.innerText()).toContain('Fast setting, hour soak');
    await page.close();
  });
});
