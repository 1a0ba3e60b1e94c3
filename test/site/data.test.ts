import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import type { Browser, FileChooser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from './browser.ts';
import { copyProject, type TestProject, tree } from './project.ts';
import { type Served, serve } from './server.ts';

/** Words that stand in the logs and nowhere else: what must never go out unless the author says so. */
const HOST = 'bench-seven';
const SERIAL = 'SN00417';

let project: TestProject;
let site: Map<string, Buffer>;

const sha256 = (bytes: Buffer | string) => createHash('sha256').update(bytes).digest('hex');
const text = (path: string) => site.get(path)!.toString('utf8');

beforeAll(() => {
  project = copyProject('data');
  writeLogs(project);
  const built = project.run('build');
  expect(built.err).not.toContain(': error:');
  expect(built.code).toBe(0);
  site = tree(join(project.root, 'dist'));
});
afterAll(() => project?.remove());

/**
 * What the demonstration's logs do not have: a column that no channel reads (default), a redaction, a log kept elsewhere, one that goes
 * out with all that it holds, one of which only the digest does.
 */
function writeLogs(project: TestProject): void {
  const withColumn = (path: string, delimiter: string, name: string, cell: string) =>
    project
      .read(path)
      .trimEnd()
      .split('\n')
      .map((line, index) => line + delimiter + (index === 0 ? name : cell))
      .join('\n');
  const rated = 'data/larch-2/rated-soak.csv';
  project.write(rated, withColumn(rated, ',', 'host', HOST));
  const quick = 'data/larch-2/quick-soak.csv';
  project.write('data/larch-2/quick-redacted.csv', withLine(project.read(quick), 'taken out,27.5,28.1,21.7,600,false,12.09,0.118'));
  // A row whose time is a word is set aside, and the page names its line.
  project.write(
    quick,
    withLine(withColumn(quick, ',', 'serial', SERIAL), `${SERIAL} plugged in,27.5,28.1,21.7,600,false,12.09,0.118,`),
  );
  project.edit(
    'content/runs/larch-quick.md',
    'log: larch-2/quick-soak.csv',
    logWith('quick-soak.csv', 'redacted: larch-2/quick-redacted.csv'),
  );
  project.edit(
    'content/runs/larch-fast.md',
    'log: larch-2/fast-soak.csv',
    logWith('fast-soak.csv', 'elsewhere: https://files.example/fast-soak.csv'),
  );
  project.edit('content/runs/larch-first-try.md', 'log: larch-2/first-try.csv', logWith('first-try.csv', 'share: as it came'));
  project.edit('content/runs/larch-metered.md', 'log: larch-2/metered.csv', logWith('metered.csv', 'share: digest only'));
  project.edit('content/setups/open-bench.md', 'licence: CC0-1.0\n', '');
  project.edit('astro.config.mjs', "licence: { words: 'CC-BY-4.0', data: 'CC0-1.0' },", '');
  project.edit('content/runs/larch-brisk.md', 'setup: open-bench', 'setup: open-bench\nlicence: CC-BY-4.0');
  project.write('data/larch-2/rated-scores.csv', withColumn('data/larch-2/rated-scores.csv', ',', 'user', HOST));
}

/** With a line after the third. */
function withLine(csv: string, line: string): string {
  return csv.split('\n').toSpliced(3, 0, line).join('\n');
}

function logWith(file: string, line: string): string {
  return `log:\n  file: larch-2/${file}\n  ${line}`;
}

/** All files of a site, those in archives too: packed, no word of theirs is found. */
function* unpacked(site: ReadonlyMap<string, Buffer>): Generator<[path: string, bytes: Buffer]> {
  for (const [path, bytes] of site) {
    yield [path, bytes];
    if (!path.endsWith('.zip')) continue;
    for (const [inner, content] of Object.entries(unzipSync(bytes))) yield [`${path}/${inner}`, Buffer.from(content)];
  }
}

describe('what goes out of a run', () => {
  it('is the log as it came, byte for byte, where the run reads all of it', () => {
    const raw = readFileSync(join(project.root, 'data', 'larch-2', 'brisk-soak.csv'));
    expect(site.get('runs/larch-brisk/data/brisk-soak.csv')!.equals(raw)).toBe(true);
    expect(
      site
        .get('devices/larch-2/data/no-1-attempts.csv')!
        .equals(readFileSync(join(project.root, 'data', 'larch-2', 'no-1-attempts.csv'))),
    ).toBe(true);
    const page = text('runs/larch-brisk/index.html');
    expect(page).toContain('/runs/larch-brisk/data/brisk-soak.csv');
    expect(page).toContain(sha256(raw));
    expect(page).toContain('Creative Commons Attribution 4.0 International');
    expect(JSON.parse(text('runs/larch-brisk/data/datapackage.json')).licenses).toMatchObject([{ name: 'CC-BY-4.0' }]);
    expect(text('runs/larch-rated/index.html')).toContain('No licence is stated');
  });

  it('is the cleaned readings alone where the log holds more, and the page says why without saying what', () => {
    expect(site.has('runs/larch-rated/data/rated-soak.csv')).toBe(false);
    expect(site.has('runs/larch-rated/data/larch-rated-clean.csv')).toBe(true);
    const page = text('runs/larch-rated/index.html');
    expect(page).toContain('not offered: it holds 1 column that no channel reads');
    expect(page).toContain('not offered: it holds 1 column that nothing reads');
    expect(page).toContain(sha256(readFileSync(join(project.root, 'data', 'larch-2', 'rated-soak.csv'))));
  });

  it('is the redacted file with both digests where the author redacts', () => {
    const redacted = site.get('runs/larch-quick/data/quick-redacted.csv')!;
    const raw = readFileSync(join(project.root, 'data', 'larch-2', 'quick-soak.csv'));
    expect(site.has('runs/larch-quick/data/quick-soak.csv')).toBe(false);
    for (const digest of [sha256(redacted), sha256(raw)]) {
      expect(text('runs/larch-quick/index.html')).toContain(digest);
      expect(text('runs/larch-quick/data/datapackage.json')).toContain(`sha256:${digest}`);
    }
  });

  it('is digest, size and address where it is kept elsewhere, with its cleaned readings', () => {
    expect(site.has('runs/larch-fast/data/fast-soak.csv')).toBe(false);
    expect(site.has('runs/larch-fast/data/larch-fast-clean.csv')).toBe(true);
    const page = text('runs/larch-fast/index.html');
    expect(page).toContain('href="https://files.example/fast-soak.csv"');
    expect(page).toContain(sha256(readFileSync(join(project.root, 'data', 'larch-2', 'fast-soak.csv'))));
    expect(page).toContain('171');
  });

  it('is as much as the author says: the whole of it, or the digest alone', () => {
    const whole = readFileSync(join(project.root, 'data', 'larch-2', 'first-try.csv'));
    expect(site.get('runs/larch-first-try/data/first-try.csv')!.equals(whole)).toBe(true);
    expect([...site.keys()].filter((path) => path.startsWith('runs/larch-metered/data/'))).toEqual([
      'runs/larch-metered/data/datapackage.json',
      'runs/larch-metered/data/metered-scores.csv',
    ]);
    expect(text('runs/larch-metered/index.html')).toContain('its author publishes the digest alone');
  });

  it('holds no unused column and no redacted word, in any file, byte by byte', () => {
    for (const path of ['rated-soak.csv', 'rated-scores.csv']) expect(project.read(`data/larch-2/${path}`)).toContain(HOST);
    expect(project.read('data/larch-2/quick-soak.csv')).toContain(SERIAL);
    expect(text('runs/larch-quick/index.html')).toContain('line 4: the time cannot be read');
    for (const [path, bytes] of unpacked(site)) {
      for (const word of [HOST, SERIAL]) expect(bytes.includes(word), `${path} holds ${word}`).toBe(false);
    }
  });

  it('is linked from the foot of the notes that rest on it', () => {
    const page = text('notes/a-clock-it-cannot-keep/index.html');
    for (const path of [
      'runs/larch-brisk/data/brisk-soak.csv',
      'runs/larch-brisk/data/larch-brisk-clean.csv',
      'runs/larch-quick/data/quick-redacted.csv',
      'runs/larch-rated/data/datapackage.json',
    ])
      expect(page).toContain(`href="/${path}"`);
    expect(page).toContain('href="https://files.example/fast-soak.csv"');
  });
});

describe('digests.json', () => {
  interface Digests {
    readonly format: number;
    readonly digests: Record<string, { what: string; of: string; page: string; path: string | null }[]>;
  }

  it('names every file of data below its digest, and only digests that are right', () => {
    const { format, digests } = JSON.parse(text('digests.json')) as Digests;
    expect(format).toBe(1);
    const listed = Object.entries(digests).flatMap(([digest, files]) => files.map((file) => ({ digest, ...file })));
    for (const { digest, path, page } of listed) {
      expect(site.has(`${page}index.html`), page).toBe(true);
      if (path !== null) expect(sha256(site.get(path)!), path).toBe(digest);
    }
    const data = [...site.keys()].filter((path) => /\/data\/|\/figures\.json$|\/ledger\.json$/.test(path));
    expect(data.length).toBeGreaterThan(30);
    expect(data.filter((path) => !listed.some((each) => each.path === path))).toEqual([]);
    const page = text('verify/index.html');
    for (const { digest } of listed) expect(page).toContain(digest);
  });
});

describe('npm run verify', () => {
  const verify = (...files: string[]) => project.run('verify', { INIT_CWD: join(project.root, 'elsewhere-or-not', '..') }, files);

  it('says which run and file a download is, also of a log that is not offered', () => {
    const ran = verify('dist/runs/larch-brisk/data/brisk-soak.csv', 'data/larch-2/rated-soak.csv', 'data/larch-2/preview-soak.csv');
    expect(ran.out).toContain(
      'brisk-soak.csv: log as it came, Brisk setting, hour soak (runs/larch-brisk/), runs/larch-brisk/data/brisk-soak.csv',
    );
    expect(ran.out).toContain(
      'rated-soak.csv: log as it came, Rated setting, hour soak (runs/larch-rated/), not offered by the site',
    );
    expect(ran.out).toContain(
      'preview-soak.csv: log as it came, Quillwort firmware, hour soak (runs/larch-preview/), not published',
    );
    expect(ran.code).toBe(0);
  });

  it('says that a changed file is none of them, and fails', () => {
    const bytes = Buffer.from(site.get('runs/larch-brisk/data/brisk-soak.csv')!);
    bytes[40] = bytes[40]! ^ 1;
    writeFileSync(join(project.root, 'changed.csv'), bytes);
    const ran = verify('changed.csv', 'dist/runs/larch-brisk/figures.json');
    expect(ran.out).toContain('changed.csv: no file of this project has this digest');
    expect(ran.out).toContain('figures.json: figures, Brisk setting, hour soak');
    expect(ran.code).toBe(1);
    const missing = verify('no-such-file.csv');
    expect([missing.code, missing.err]).toEqual([2, 'no-such-file.csv: cannot be read\n']);
    expect(verify().code).toBe(2);
  });
});

describe('the page that checks files', () => {
  let served: Served;
  let browser: Browser;
  beforeAll(async () => {
    served = await serve(join(project.root, 'dist'));
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await served?.close();
  });

  async function open(): Promise<{ page: Page; asked: string[]; close: () => Promise<void> }> {
    const context = await browser.newContext();
    const page = await context.newPage();
    const asked: string[] = [];
    page.on('request', (request) => asked.push(`${request.method()} ${request.url().slice(served.address.length)}`));
    await page.goto(`${served.address}verify/`);
    return { page, asked, close: () => context.close() };
  }

  it('answers by keyboard, asks for nothing but the digests, and sends nothing', async () => {
    const { page, asked, close } = await open();
    await page.locator('#file-to-check').waitFor();
    asked.length = 0;
    await page.locator('h1').click();
    const choosers: FileChooser[] = [];
    page.on('filechooser', (chooser) => choosers.push(chooser));
    const isReached = () => page.evaluate('document.activeElement.id === "file-to-check"');
    for (let press = 0; press < 30 && !(await isReached()); press++) await page.keyboard.press('Tab');
    expect(await isReached()).toBe(true);
    // The driver hears of choosers only once it has told the browser so: on a loaded machine that may come after the key.
    await expect
      .poll(async () => {
        if (choosers.length === 0) await page.keyboard.press('Enter');
        return choosers.length;
      })
      .toBeGreaterThan(0);
    await choosers[0]!.setFiles([
      join(project.root, 'dist', 'runs', 'larch-brisk', 'data', 'larch-brisk-clean.csv'),
      join(project.root, 'data', 'larch-2', 'fast-soak.csv'),
      join(project.root, 'package.json'),
    ]);
    const answers = page.locator('.answers li');
    await expect.poll(() => answers.count()).toBe(3);
    expect(await answers.nth(0).innerText()).toContain(
      'Unchanged: cleaned readings, Brisk setting, hour soak, published as runs/larch-brisk/data/larch-brisk-clean.csv',
    );
    expect(await answers.nth(1).innerText()).toContain('kept elsewhere: https://files.example/fast-soak.csv');
    expect(await answers.nth(2).innerText()).toContain('This site published no file with this digest.');
    expect(asked).toEqual(['GET digests.json']);
    await close();
  });

  it('takes a file that is dropped on it', async () => {
    const { page, close } = await open();
    const content = site.get('runs/larch-quick/data/quick-redacted.csv')!.toString('base64');
    await page.locator('.check-file').waitFor();
    await page.evaluate(`{
      const bytes = Uint8Array.from(atob(${JSON.stringify(content)}), (c) => c.charCodeAt(0));
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([bytes], 'dropped.csv'));
      document.querySelector('.check-file').dispatchEvent(new DragEvent('drop', { dataTransfer, cancelable: true }));
    }`);
    await expect
      .poll(() => page.locator('.answers li').allInnerTexts())
      .toEqual([expect.stringContaining('Unchanged: log as its author redacted it, Quick setting, hour soak')]);
    await close();
  });

  it('says what to do where the browser has no digests, and where the list cannot be had', async () => {
    const { page, close } = await open();
    await page.addInitScript('Object.defineProperty(globalThis.crypto, "subtle", { value: undefined })');
    await page.reload();
    await expect
      .poll(() => page.locator('#check').innerText())
      .toContain('only on pages that come over https or from this machine');
    await close();
    const offline = await open();
    await offline.page.route('**/digests.json', (route) => route.abort());
    await offline.page.locator('#file-to-check').setInputFiles(join(project.root, 'package.json'));
    await expect.poll(() => offline.page.locator('.answers').innerText()).toContain('The list of digests could not be loaded');
    await offline.close();
  });
});

describe('a redaction that changes a reading', () => {
  it('stops the build at the cell, and leaves the site as it was', () => {
    const path = 'data/larch-2/quick-redacted.csv';
    const original = project.read(path);
    const lines = original.split('\n');
    lines[700] = lines[700]!.replace(/^(\d+),\d/, '$1,9');
    project.write(path, lines.join('\n'));
    const ran = project.run('build');
    const verified = project.run('verify', {}, ['package.json']);
    project.write(path, original);
    expect(ran.code).toBe(1);
    expect(verified.out).toContain(
      'package.json: no file of this project has this digest, as far as it can be read: it has 1 error;',
    );
    expect(verified.code).toBe(2);
    expect(ran.err).toMatch(
      /^data\/larch-2\/quick-redacted\.csv:701:15: error: the column `die \(°C\)` \(soc\) of the redacted log: 9[\d.]+ °C, where line 701 of data\/larch-2\/quick-soak\.csv has [\d.]+ °C/m,
    );
    expect(tree(join(project.root, 'dist')).get('runs/larch-quick/data/quick-redacted.csv')!.toString()).toBe(original);
  });
});
