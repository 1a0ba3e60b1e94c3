import type { ChildProcess } from 'node:child_process';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { type PreviewServer, preview as vitePreview } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hostFaults } from '../../src/commands/check-site/at-host.ts';
import { brokenLinks } from '../../src/compute/outgoing/links.ts';
import { type SiteFile, siteFiles } from '../../src/compute/outgoing/site-files.ts';
import { openBrowser } from './browser.ts';
import { copySmall, type TestProject, tree } from './project.ts';

const BASE = '/reports/';
let project: TestProject;
let dist: string;
let files: readonly SiteFile[];
let browser: Browser;

beforeAll(async () => {
  project = copySmall('hosting');
  project.edit('astro.config.mjs', "base: '/'", `base: '${BASE}'`);
  // A variable of the shell must not take the place of what the project says.
  expect(project.run('build', { BASE_URL: '/elsewhere/' }).code).toBe(0);
  dist = join(project.root, 'dist');
  files = siteFiles(dist);
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  project?.remove();
});

/** Pages of each kind that loads something, and how often their policy was broken or their scripts failed. */
async function visit(address: string): Promise<{ readonly pages: number; readonly broken: readonly string[] }> {
  const context = await browser.newContext();
  const page = await context.newPage();
  const broken = await heard(page);
  const paths = [
    '',
    'notes/a-clock-it-cannot-keep/',
    'runs/',
    'runs/larch-rated/',
    'compare/',
    'search/',
    'verify/',
    'method/',
    'about/',
  ];
  for (const path of paths) {
    const response = await page.goto(address + path, { waitUntil: 'networkidle' });
    expect(response?.status(), path).toBe(200);
  }
  await context.close();
  return { pages: paths.length, broken };
}

/** What a page says on its console, and each break of its policy. */
async function heard(page: Page): Promise<string[]> {
  const said: string[] = [];
  page.on('console', (message) => said.push(message.text()));
  page.on('pageerror', (thrown) => said.push(String(thrown)));
  await page.exposeFunction('tellBroken', (directive: string) => said.push(directive));
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) =>
      (window as unknown as { tellBroken(directive: string): void }).tellBroken(effectiveDirective),
    );
  });
  return said;
}

const faults = async (address: string) => (await hostFaults(files, address)).map(({ rule, found }) => `${rule}: ${found}`);

describe('a base path', () => {
  it('stands before every address, and no link is broken', () => {
    for (const [path, bytes] of tree(dist)) {
      if (!path.endsWith('.html')) continue;
      for (const [, address] of bytes.toString('utf8').matchAll(/(?:href|src)="(\/[^"]*)"/g))
        expect(address, path).toMatch(/^\/reports\//);
    }
    expect(brokenLinks(files, { base: BASE, address: `https://bench.example${BASE}` })).toEqual([]);
  });
});

describe('npm run preview', () => {
  let child: ChildProcess;
  let address = '';
  beforeAll(async () => {
    child = project.start('preview', ['--port', '0']);
    let printed = '';
    for await (const chunk of child.stdout!) {
      printed += chunk;
      address = /http:\/\/\S+(?=,)/.exec(printed)?.[0] ?? '';
      if (address !== '') break;
    }
  });
  afterAll(() => child?.kill());

  it('shows the site with all that it asks of a host, and no page breaks its policy', async () => {
    expect(address).toMatch(/^http:\/\/localhost:\d+\/reports\/$/);
    expect(await faults(address)).toEqual([]);
    expect(await visit(address)).toEqual({ pages: 9, broken: [] });
  });

  it('lets no other page frame it, and a break of the policy would be noticed', async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    const broken = await heard(page);
    await page.goto(address);
    await page.evaluate((to) => {
      const frame = document.createElement('iframe');
      frame.src = to;
      document.body.append(frame);
    }, address);
    await expect.poll(() => broken.join('\n')).toContain('frame-ancestors');
    await context.close();
  });
});

describe('a host that shows files alone, and no index of a folder', () => {
  let server: Server;
  let address = '';
  beforeAll(async () => {
    server = createServer(({ url = '' }, response) => {
      const file = join(dist, decodeURI(url.split('?')[0]!.slice(BASE.length)));
      const there = existsSync(file) && statSync(file).isFile();
      response.writeHead(there ? 200 : 404).end(there ? readFileSync(file) : 'no such key');
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    address = `http://127.0.0.1:${(server.address() as AddressInfo).port}${BASE}`;
  });
  afterAll(() => {
    server?.closeAllConnections();
    server?.close();
  });

  it('is told, and is an error', async () => {
    const { code, err } = await checkAt(address);
    expect(code).toBe(1);
    expect(err).toContain(`error: the host shows something else at ${address}404.html`.replace('404.html', ''));
    expect(err).toContain('[host-folder]');
    expect(err).toContain('warning: the host sends no Content-Security-Policy');
  });
});

describe('a static server of another package', () => {
  let server: PreviewServer;
  let address = '';
  beforeAll(async () => {
    server = await vitePreview({
      configFile: false,
      root: project.root,
      base: BASE,
      appType: 'mpa',
      logLevel: 'silent',
      preview: { port: 0, host: '127.0.0.1' },
    });
    address = `http://127.0.0.1:${(server.httpServer.address() as AddressInfo).port}${BASE}`;
  });
  afterAll(() => server?.close());

  it('shows the site, no page breaks its policy, and the headers that it leaves out are told', async () => {
    expect(await visit(address)).toEqual({ pages: 9, broken: [] });
    const told = await faults(address);
    expect(told.length).toBeGreaterThan(2);
    expect(told.filter((line) => !line.startsWith('host-header: '))).toEqual([]);
    expect(told.join('\n')).toContain('the host sends no X-Content-Type-Options');
  });
});

/** The command, while this process serves the host that it asks. */
async function checkAt(address: string): Promise<{ code: number | null; err: string }> {
  const child = project.start('check-site', ['--at', address]);
  let err = '';
  child.stderr!.on('data', (chunk) => {
    err += chunk;
  });
  const code = await new Promise<number | null>((resolve) => child.on('close', resolve));
  return { code, err };
}
