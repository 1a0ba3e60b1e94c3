import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import library from 'datapackage';
import { unzipSync } from 'fflate';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from './browser.ts';
import { copyFolder, copyProject, copyUnbuilt, type Ran, removeContents, type TestProject, tree } from './project.ts';
import { type Served, serve } from './server.ts';
import { againstSchema, againstTypes, structuredData } from './structured-data.ts';

const NOTE = 'a-clock-it-cannot-keep';
const OTHER = 'a-second-larch';
/** Stands in everything that the author wrote and that no page prints. */
const PRIVATE = 'NOBODYS-BUSINESS';

/** Runs that published notes reach; of the others nothing may go out. */
const HELD_BACK = 'larch-preview';

let project: TestProject;
let rebuilt: TestProject;
let ran: Ran;
let site: Map<string, Buffer>;

beforeAll(() => {
  project = copyProject('zip');
  writePrivately(project);
  const built = project.run('build');
  expect(built.err).not.toContain(': error:');
  expect(built.code).toBe(0);
  site = tree(join(project.root, 'dist'));
  rebuilt = emptyCheckout('zip-again');
  unpack(rebuilt, archive(NOTE));
  // In another zone than it was made in: neither its files nor their civil times may come out otherwise.
  ran = rebuilt.run('build', { TZ: 'Pacific/Auckland' });
});
afterAll(() => {
  project?.remove();
  rebuilt?.remove();
});

const archive = (slug: string) => unzipSync(site.get(`notes/${slug}/${slug}.zip`)!);
const textOf = (bytes: Uint8Array | undefined) => new TextDecoder().decode(bytes!);

/** As REBUILD.txt says: the page about the publication, which its configuration names, stays. */
function emptyCheckout(name: string): TestProject {
  const empty = copyUnbuilt(name);
  removeContents(empty.root);
  return empty;
}

function unpack(into: TestProject, files: ReturnType<typeof unzipSync>): void {
  for (const [path, bytes] of Object.entries(files)) {
    mkdirSync(dirname(join(into.root, path)), { recursive: true });
    writeFileSync(join(into.root, path), bytes);
  }
}

/** Remarks in every kind of file, a channel that no published run has, and logs that stay with their author. */
function writePrivately(project: TestProject): void {
  for (const folder of ['devices', 'instruments', 'setups', 'runs', 'attempts', 'comparisons', 'notes', 'scripts'])
    for (const name of readdirSync(join(project.root, 'content', folder)))
      project.edit(`content/${folder}/${name}`, '---\n', `---\n# ${PRIVATE}\n`);
  for (const name of readdirSync(join(project.root, 'content', 'runs')))
    project.edit(
      `content/runs/${name}`,
      '\nchannels:\n',
      `\nchannels:\n  unseen_rail: ${name.startsWith(HELD_BACK) ? '\n    column: "Input [V]"' : 'none'}\n`,
    );
  project.edit(
    'content/setups/open-bench.md',
    '\nchannels:\n',
    `\nchannels:\n  unseen_rail:\n    quantity: voltage\n    at: rail\n    instrument: inline-meter\n    missing: ${PRIVATE}\n`,
  );
  project.edit('content/instruments/probe.md', '  temperature:\n', `  temperature:\n    # ${PRIVATE}\n`);
  project.write(
    'content/attempts/larch-2-no-1.md',
    `${project.read('content/attempts/larch-2-no-1.md')}\n${PRIVATE} in words that no page prints.\n`,
  );
  project.edit(
    `content/notes/${NOTE}.md`,
    'That is a dull result',
    `<!-- ${PRIVATE} -->\n[//]: # (${PRIVATE})\n\nUnlike [the other one](../${OTHER}/), that is a dull result`,
  );
  project.edit('content/runs/larch-rated.md', 'The setting as sold', `The setting <!-- ${PRIVATE} --> as sold`);
  const quick = 'data/larch-2/quick-soak.csv';
  const lines = project.read(quick).trimEnd().split('\n');
  project.write(quick, lines.map((line, index) => `${line},${index === 0 ? 'host' : PRIVATE}`).join('\n'));
  project.edit(
    'content/runs/larch-second.md',
    '  file: larch-2/second-rated-soak.csv',
    '  file: larch-2/second-rated-soak.csv\n  share: digest only',
  );
}

describe('the archive of a note', () => {
  it('builds again in an empty checkout', () => {
    expect(ran.err + ran.out).not.toContain(': error:');
    expect(ran.code).toBe(0);
  });

  it('gives the same figures and ledgers, to the byte, wherever the log itself is in it', () => {
    const computed = Object.keys(archive(NOTE)).filter((path) => /^as-published\/.*(?:figures|ledger)\.json$/.test(path));
    const others = computed.filter((path) => rebuilt.read(path.replace('as-published', 'dist')) !== rebuilt.read(path));
    expect(computed.length).toBe(10);
    expect(others.toSorted()).toEqual(
      ['runs/larch-first-try', 'runs/larch-quick'].map((each) => `as-published/${each}/figures.json`),
    );
  });

  it('gives the same values, uncertainties and intervals where cleaned readings stand in for the log', () => {
    for (const path of ['runs/larch-first-try', 'runs/larch-quick']) {
      const published = figuresIn(rebuilt, `as-published/${path}/figures.json`);
      expect(Object.keys(published).length).toBeGreaterThan(10);
      expect(figuresIn(rebuilt, `dist/${path}/figures.json`)).toEqual(published);
    }
  });

  it('has the site’s own files in it', () => {
    const files = archive(NOTE);
    const published = Object.entries(files).filter(([path]) => path.startsWith('as-published/') && !path.includes('/devices/'));
    for (const [path, bytes] of published) expect(site.get(path.replace('as-published/', ''))!.equals(bytes), path).toBe(true);
    // A device's figures rest on all its published runs; in the archive, on those of the archive.
    expect(Object.keys(files)).toContain('as-published/devices/larch-2/figures.json');
    for (const name of ['brisk', 'fast', 'rated'])
      expect(
        Buffer.from(files[`data/larch-2/${name}-soak.csv`]!).equals(
          readFileSync(join(project.root, `data/larch-2/${name}-soak.csv`)),
        ),
      ).toBe(true);
  });

  it('keeps what no page prints with its author, also in what is built from it', () => {
    expect(project.read('content/setups/open-bench.md')).toContain(PRIVATE);
    for (const slug of [NOTE, OTHER])
      for (const [path, bytes] of Object.entries(archive(slug)))
        for (const word of [PRIVATE, 'unseen_rail', HELD_BACK, 'Quillwort', 'Moonwort', 'open-bench'])
          expect(textOf(bytes), `${path} of ${slug}`).not.toContain(word);
    for (const [path, bytes] of site) expect(bytes.includes(PRIVATE), path).toBe(false);
  });

  it('describes its data in a form that another reader takes', async () => {
    const descriptor = JSON.parse(textOf(archive(NOTE)['datapackage.json'])) as {
      resources: { path: string; hash: string; bytes: number }[];
    };
    const read = await library.Package.load(descriptor as object, { basePath: rebuilt.root, strict: false });
    expect(read.errors).toEqual([]);
    expect(read.valid).toBe(true);
    expect(descriptor.resources.length).toBeGreaterThan(15);
    for (const { path, bytes } of descriptor.resources) expect(archive(NOTE)[path]!.length, path).toBe(bytes);
  });

  it('says how to build it, what stands in for a log, and under which licence all of it is', () => {
    const text = textOf(archive(NOTE)['REBUILD.txt']);
    expect(text).toContain('runs/larch-quick reads data/cleaned/larch-quick-clean.csv, cleaned readings');
    const { version } = JSON.parse(project.read('package.json')) as { version: string };
    expect(text).toContain(`version ${version}: \`soakproof new FOLDER\``);
    const { inputs } = JSON.parse(rebuilt.read('.cache/manifest-site.json').split('\n')[1]!) as { inputs: { code: string } };
    expect(text).toContain(`the digest ${inputs.code}`);
    const licences = textOf(archive(NOTE)['LICENCES.txt']);
    expect(licences).toContain(`notes/${NOTE}: Creative Commons Attribution 4.0 International (CC-BY-4.0), https://`);
    expect(licences).toContain('runs/larch-rated: Creative Commons Zero v1.0 Universal (CC0-1.0), https://');
  });

  it('names with `verify` what was computed to the same bytes', () => {
    const [, paths] = /npm run verify -- (.*)/.exec(textOf(archive(NOTE)['REBUILD.txt']))!;
    const { out, code } = rebuilt.run('verify', {}, paths!.split(' '));
    expect(out).toContain('as-published/runs/larch-rated/figures.json: figures, Rated setting, hour soak');
    expect(out).not.toContain('no file of this project has this digest');
    expect(code).toBe(0);
    // What a run reads in the place of its log stands in its figures, beside the same values.
    const others = [...textOf(archive(NOTE)['REBUILD.txt']).matchAll(/^(runs\/[^ ]+) reads /gm)].map(
      ([, run]) => `as-published/${run}/figures.json`,
    );
    expect(others.length).toBeGreaterThan(0);
    for (const path of others) expect(paths).not.toContain(path);
    expect(rebuilt.run('verify', {}, others).out.match(/no file of this project has this digest/g)).toHaveLength(others.length);
  });

  it('links to pages that are not in it, and says where it comes from', () => {
    const origin = JSON.parse(textOf(archive(NOTE)[`content/archives/${NOTE}.json`])) as object;
    const digest = expect.stringMatching(/^[0-9a-f]{64}$/);
    expect(origin).toEqual({
      format: 1,
      of: `notes/${NOTE}`,
      site: 'https://bench.example/',
      links: [`notes/${OTHER}/`],
      pictures: [{ path: 'larch-2/bench.jpg', original: digest, published: digest }],
    });
    expect(existsSync(join(rebuilt.root, 'dist', 'notes', OTHER))).toBe(false);
  });

  it('says what is missing where an author publishes a digest alone, and stops until it is there', () => {
    const files = archive(OTHER);
    const text = textOf(files['REBUILD.txt']);
    const missing = /data\/larch-2\/second-rated-soak\.csv \(runs\/larch-second, SHA-256 ([0-9a-f]{64})\): its author keeps it/;
    expect(text).toMatch(missing);
    const without = emptyCheckout('zip-missing');
    copyFolder(rebuilt.root, without.root, '.cache');
    unpack(without, files);
    const stopped = without.run('check');
    expect(stopped.code).toBe(1);
    expect(stopped.err).toContain('content/runs/larch-second.md');
    expect(stopped.err).toContain('data-missing');
    writeFileSync(
      join(without.root, 'data/larch-2/second-rated-soak.csv'),
      readFileSync(join(project.root, 'data/larch-2/second-rated-soak.csv')),
    );
    const whole = without.run('check');
    expect(whole.err).not.toContain(': error:');
    expect(whole.code).toBe(0);
    without.remove();
  });
});

function figuresIn(project: TestProject, path: string): Record<string, unknown> {
  const { figures } = JSON.parse(project.read(path)) as { figures: Record<string, Record<string, unknown>> };
  return Object.fromEntries(
    Object.entries(figures).map(([address, { value, unit, u, dof, interval, parts, absent }]) => [
      address,
      { value, unit, u, dof, interval, parts, absent },
    ]),
  );
}

describe('structured data', () => {
  const pages = () => [...site].filter(([path]) => /^(?:notes|runs)\/[^/]+\/index\.html$/.test(path));
  const things = () => pages().flatMap(([, html]) => structuredData(html.toString('utf8')));

  it('stands in the page of every note and run, and keeps to the definitions of schema.org', () => {
    expect(things()).toHaveLength(pages().length);
    expect(things().length).toBeGreaterThan(8);
    // One with a property that its class does not have goes along, so that the judge is seen to judge.
    const wrong = { ...things()[0], variableMesured: 'x' };
    expect(againstTypes([...things(), wrong])).toEqual([expect.stringContaining('variableMesured')]);
    const errorsOf = againstSchema();
    expect(things().flatMap(errorsOf)).toEqual([]);
    expect(errorsOf({ ...things()[0], datePublished: 5 }).length).toBeGreaterThan(0);
  });

  it('names files that are there, with their digests', async () => {
    const { createHash } = await import('node:crypto');
    const files = things().flatMap((thing) => [thing.distribution ?? [], thing.encoding ?? []].flat()) as {
      contentUrl: string;
      sha256: string;
    }[];
    expect(files.length).toBeGreaterThan(20);
    for (const { contentUrl, sha256 } of files) {
      const bytes = site.get(contentUrl.replace('https://bench.example/', ''))!;
      expect(createHash('sha256').update(bytes).digest('hex'), contentUrl).toBe(sha256);
    }
  });

  it('names authors where the note does, and no creator where nobody does', () => {
    const byUrl = new Map(things().map((thing) => [thing.url, thing]));
    expect(byUrl.get(`https://bench.example/notes/${NOTE}/`)!.author).toEqual([
      { '@type': 'Person', name: 'Rowan Alder (invented)' },
    ]);
    expect(byUrl.get(`https://bench.example/notes/${OTHER}/`)).not.toHaveProperty('author');
    expect(byUrl.get('https://bench.example/runs/larch-rated/')).not.toHaveProperty('creator');
  });
});

describe('in a browser', () => {
  let browser: Browser;
  let served: Served;
  beforeAll(async () => {
    browser = await openBrowser();
    served = await serve(join(project.root, 'dist'));
  });
  afterAll(async () => {
    await browser?.close();
    await served?.close();
  });

  it('the policy of the page has nothing to say, and the archive and the citation are there to take', async () => {
    const page = await browser.newPage();
    const said: string[] = [];
    page.on('console', (message) => said.push(message.text()));
    page.on('pageerror', (thrown) => said.push(String(thrown)));
    for (const path of [`notes/${NOTE}/`, 'runs/larch-rated/']) {
      await page.goto(served.address + path);
      expect(await page.locator('script[type="application/ld+json"]').count()).toBe(1);
    }
    expect(said).toEqual([]);
    await page.goto(`${served.address}notes/${NOTE}/`);
    expect(await page.locator('.archive a').getAttribute('href')).toBe(`/notes/${NOTE}/${NOTE}.zip`);
    expect(await page.locator('p.cite').innerText()).toMatch(
      /^Rowan Alder \(invented\) \(2026\): Paying for a clock it cannot keep\. Bench notes, 2026-03-21\. https:/,
    );
    await page.close();
  });
});
