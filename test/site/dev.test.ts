import type { ChildProcess } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMONSTRATION } from '../demonstration-folder.ts';
import { openBrowser } from './browser.ts';
import { copyFolder, copySmall, type TestProject } from './project.ts';

const NOTE = 'content/notes/a-second-larch.md';
/** A draft with its runs, which the small project leaves out. */
const DRAFT = ['notes/the-next-firmware.md', 'runs/larch-brisk.md', 'runs/larch-preview.md'];

let project: TestProject;
let server: ChildProcess;
let address: string;
let printed = '';
let browser: Browser;
let page: Page;

beforeAll(async () => {
  project = copySmall('dev');
  for (const file of DRAFT) copyFolder(DEMONSTRATION, project.root, `content/${file}`);
  server = project.start('dev', ['--port', '0']);
  const found = new Promise<string>((resolve, reject) => {
    const hear = (chunk: Buffer) => {
      printed += chunk.toString('utf8');
      const match = /http:\/\/(?:localhost|127\.0\.0\.1):\d+(?=\/)/.exec(printed);
      if (match !== null) resolve(match[0]);
    };
    server.stdout!.on('data', hear);
    server.stderr!.on('data', hear);
    server.once('exit', () => reject(new Error(`dev ended: ${printed}`)));
  });
  address = await found;
  browser = await openBrowser();
  page = await browser.newPage();
  await page.goto(`${address}/notes/a-second-larch/`);
});
afterAll(async () => {
  await browser?.close();
  server?.kill();
  project?.remove();
});

const holds = (text: string) => page.waitForFunction((wanted) => document.body.innerText.includes(wanted), text);
const lacks = (text: string) => page.waitForFunction((unwanted) => !document.body.innerText.includes(unwanted), text);

describe('npm run dev', () => {
  it('answers a malformed address with 400 and no stack', async () => {
    const answer = await fetch(`${address}/%`);
    expect([answer.status, await answer.text()]).toEqual([400, '400: this address is malformed.\n']);
  });

  it('shows a saved note in the open page by itself', async () => {
    project.edit(NOTE, 'One specimen is an anecdote', 'One specimen is a fable');
    await holds('One specimen is a fable');
  });

  it('shows a changed CSV', async () => {
    const steady = page.locator('a.held[id^="second.steady_temperature-"]').first();
    const before = await steady.innerText();
    const path = 'data/larch-2/second-rated-soak.csv';
    const warmer = (_all: string, time: string, degrees: string, rest: string) => `${time}${Number(degrees) + 5}${rest}`;
    project.write(path, project.read(path).replaceAll(/(:\d\d, )(\d\d)(\.\d,)/g, warmer));
    await expect.poll(() => steady.innerText()).not.toBe(before);
    expect(Number.parseFloat(await steady.innerText())).toBeCloseTo(Number.parseFloat(before) + 5, 1);
  });

  it('shows a problem in page and terminal, and takes it away when mended', async () => {
    const text = project.read(NOTE);
    project.write(NOTE, text.replace('second.steady_temperature]', 'second.steddy_temperature]'));
    await holds('steddy_temperature');
    expect(await page.locator('.problems .error').isVisible()).toBe(true);
    expect(printed).toMatch(/content\/notes\/a-second-larch\.md:\d+:\d+: error: /);
    project.write(NOTE, text);
    await lacks('steddy_temperature');
    expect(await page.locator('.problems .error').count()).toBe(0);
  });

  it('shows what took a page away, and brings the page back by itself', async () => {
    const text = project.read(NOTE);
    project.write(NOTE, text.replace('status: published', 'status: publishd'));
    await holds('publishd');
    expect(await page.locator('.problems .error').count()).toBeGreaterThan(0);
    project.write(NOTE, text);
    await holds('The second one runs warmer');
    expect(page.url()).toContain('/notes/a-second-larch/');
  });

  it('shows drafts, marked', async () => {
    const other = await browser.newPage();
    await other.goto(`${address}/notes/the-next-firmware/`);
    expect(await other.locator('.status').innerText()).toContain('Draft');
    await other.close();
  });

  it('serves files beside the pages', async () => {
    const answer = await page.request.get(`${address}/runs/larch-rated/figures.json`);
    expect(answer.status()).toBe(200);
    expect(await answer.json()).toHaveProperty('format', 1);
  });

  it('shows a note that was not there before, and forgets one that is gone', async () => {
    project.write('content/notes/fresh.md', project.read(NOTE).replace('The second one runs warmer', 'Freshly written'));
    await page.goto(`${address}/`);
    await holds('Freshly written');
    await page.goto(`${address}/notes/fresh/`);
    await holds('Freshly written');
    rmSync(join(project.root, 'content/notes/fresh.md'));
    await page.goto(`${address}/`);
    await lacks('Freshly written');
  });

  it("shows a change of stage 1's own code", async () => {
    await page.goto(`${address}/method/`);
    project.edit('src/compute/pages/method-chapters.ts', "title: 'Rounding'", "title: 'How values are rounded'");
    await holds('How values are rounded');
  });
});
