import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { copyFile, copyId, sealedCopy } from '../../src/compute/record-copies/copy.ts';
import { digest } from '../../src/compute/store/digest.ts';
import type { RecordCopy } from '../../src/register/sealed/record-copies.ts';
import { copyProject, differences, type TestProject, tree } from './project.ts';

const COMPARISON = 'content/comparisons/two.md';
const NOTE = 'content/notes/two.md';
const FAST_LOG = 'data/larch-2/fast-soak.csv';
const DAY = '2026-04-02';

let project: TestProject;
/** The copy that the tests make, and its own part of the page as it was printed first. */
let copy: RecordCopy;
let own: string;

const at = (path: string) => join(project.root, path);
const page = (id = copy.id) => project.read(`dist/record-copies/${id}/index.html`);

/** What the page prints of the copy alone, to the byte; and what it says beside it. */
function partsOf(html: string): { own: string; since: string; before: string } {
  const [before = '', rest = ''] = html.split('<div id="as-recorded">');
  const [part = '', since = ''] = rest.split('<section id="since"');
  expect(part.length).toBeGreaterThan(10_000);
  return { own: part, since, before };
}

/** A published note with that front matter and text. */
function writeNote(front: string, text: string): void {
  project.write(NOTE, `---\ntitle: Two settings\ndate: ${DAY}\nstatus: published\n${front}---\n\n${text}\n`);
}

/** Removes the files of a folder of content/ that a test does not need. */
function keepOnly(folder: string, ids: readonly string[]): void {
  for (const name of readdirSync(at(`content/${folder}`))) {
    if (!ids.includes(name.replace(/\.md$/, ''))) rmSync(at(`content/${folder}/${name}`));
  }
}

function builds(): string {
  const { code, err } = project.run('build');
  expect(err).not.toContain(': error:');
  expect(code).toBe(0);
  return err;
}

beforeAll(() => {
  project = copyProject('record-copies');
  project.unprotect();
  rmSync(at('content/record-copies'), { recursive: true, force: true });
  keepOnly('notes', []);
  keepOnly('scripts', []);
  keepOnly('attempts', []);
  keepOnly('comparisons', []);
  keepOnly('runs', ['larch-rated', 'larch-fast']);
  const runs = 'runs:\n  rated: larch-rated\n  fast: larch-fast\n';
  project.write(COMPARISON, `---\ntitle: Rated and fast\n${runs}reference: rated\n---\n`);
  writeNote('comparisons:\n  two: two\n', 'The fast setting is :value[two.speedup.fast] times as quick.');
  const ran = project.run('record', {}, ['two', '--date', DAY]);
  expect(ran.err).toBe('');
  const [file = ''] = readdirSync(at('content/record-copies'));
  const { sha256: _seal, ...read } = JSON.parse(project.read(`content/record-copies/${file}`)) as RecordCopy & { sha256: string };
  copy = read;
  builds();
  own = partsOf(page()).own;
});
afterAll(() => project.remove());

describe('a record copy', () => {
  it('prints figures, plots, settings and digests from itself, under its permalink, and says that nothing has changed', () => {
    const { since } = partsOf(page());
    for (const told of [copy.record.title, DAY, 'Fast setting, hour soak', '2.6\u00a0GHz', copy.record.runs[1]!.log!.sha256]) {
      expect(own.includes(told), told).toBe(true);
    }
    expect(own.match(/<svg/g)!.length).toBeGreaterThan(4);
    expect(own).toContain(`https://bench.example/record-copies/${copy.id}/`);
    expect(since).toContain('Nothing has changed since.');
    expect(since).toContain('href="/comparisons/two/"');
    expect(project.read('dist/comparisons/two/index.html')).toContain(`href="/record-copies/${copy.id}/"`);
  });

  it('links from its own part to itself, its own files and definitions alone', () => {
    const links = [...own.matchAll(/href="([^"#]*)/g)].map(([, href = '']) => href);
    const others = links.filter((href) => href !== '' && !href.startsWith(`/record-copies/${copy.id}/`) && href !== '/method/');
    expect(others).toEqual([]);
    for (const href of new Set(links)) expect(existsSync(at(`dist${href}`)), href).toBe(true);
  });

  it('prints the same numbers as the living comparison', () => {
    const cells = (html: string) =>
      [...html.matchAll(/<td[^>]*>(.*?)<\/td>/gs)].map(([, text]) => text!.replace(/<a[^>]*>|<\/a>/g, ''));
    const living = cells(project.read('dist/comparisons/two/index.html'));
    expect(living.length).toBeGreaterThan(100);
    expect(cells(own)).toEqual(living);
    const figures = (path: string) => (JSON.parse(project.read(path)) as { figures: object }).figures;
    expect(figures(`dist/record-copies/${copy.id}/figures.json`)).toEqual(figures('dist/comparisons/two/figures.json'));
  });

  it('is published byte for byte, with the digest that its page prints, and stands in the index', () => {
    const bytes = readFileSync(at(`dist/record-copies/${copy.id}/record.json`));
    expect(bytes.equals(readFileSync(at(copyFile(copy.id))))).toBe(true);
    expect(own).toContain(digest(bytes));
    const row = {
      id: copy.id,
      title: 'Rated and fast',
      date: DAY,
      path: `record-copies/${copy.id}/`,
      runs: ['larch-rated', 'larch-fast'],
    };
    expect(JSON.parse(project.read('dist/record-copies/index.json'))).toEqual({ format: 1, copies: [row] });
    expect(project.read('dist/record-copies/index.html')).toContain(`href="/record-copies/${copy.id}/"`);
  });

  it('with one byte changed by hand stops the build, which names it and leaves dist/ as it was', () => {
    const path = copyFile(copy.id);
    const text = project.read(path);
    const before = tree(at('dist'));
    const digit = text.indexOf('"value":') + '"value":'.length;
    project.write(path, text.slice(0, digit) + ((Number(text[digit]) + 1) % 10) + text.slice(digit + 1));
    const { code, err } = project.run('build');
    project.write(path, text);
    expect(code).toBe(1);
    expect(err).toContain(`${path}:1:1: error: this record copy is not as \`npm run record\` wrote it [record-copy]`);
    expect(differences(before, tree(at('dist')))).toEqual([]);
  });
});

describe('a record copy of somebody else', () => {
  it('prints its words as words, whatever they are', () => {
    const evil = '<img src=x onerror="alert(1)">"\'</script><script>alert(2)</script>';
    const record = structuredClone(copy.record);
    record.title = evil;
    for (const run of record.runs) {
      run.title = evil;
      run.specimen = evil;
      run.log!.file = evil;
      run.setting.push({ label: evil, text: evil });
      run.cautions.push({ done: [evil], risk: evil });
      for (const channel of run.series.channels) channel.name = `${channel.name}${evil}`;
    }
    const content = { format: 1, date: DAY, record } as const;
    const other = { ...content, id: copyId(content) };
    project.write(copyFile(other.id), sealedCopy(other));
    builds();
    const html = page(other.id);
    for (const file of [html, project.read('dist/record-copies/index.html'), project.read('dist/comparisons/two/index.html')]) {
      // Within an attribute's quotation marks, which are escaped in what it holds, nothing begins an element.
      const printed = file.replaceAll(/ aria-label="[^"]*"/g, '');
      expect(printed).not.toContain('<img src=x');
      expect(printed).not.toContain('<script>alert');
      expect(printed).toContain('&lt;img src=x');
    }
    rmSync(at(copyFile(other.id)));
  });
});

describe('a record copy whose runs change', () => {
  it('prints the same to the byte, and says which log, condition and figures changed and by how much', () => {
    const bytes = readFileSync(at(FAST_LOG), 'latin1');
    const warmer = bytes.replaceAll(/^(\d+;)(\d\d)(,\d;)/gm, (_all, time: string, degrees: string, rest: string) => {
      return `${time}${Number(degrees) + 2}${rest}`;
    });
    expect(warmer).not.toBe(bytes);
    writeFileSync(at(FAST_LOG), warmer, 'latin1');
    project.edit('content/setups/open-bench.md', 'cooling: ', 'cooling: a fan over the ');
    builds();
    const parts = partsOf(page());
    expect(parts.own === own).toBe(true);
    expect(parts.before).toContain('What changed since');
    for (const told of [
      copy.record.runs[1]!.log!.sha256,
      digest(readFileSync(at(FAST_LOG))),
      'a fan over the ',
      'difference in rise over ambient',
      'by +2.00\u00a0K, ',
      'of its standard uncertainties',
    ]) {
      expect(parts.since.includes(told), told).toBe(true);
    }
    expect(parts.since).not.toContain(copy.record.runs[0]!.log!.sha256);
  });

  it('and are then deleted, with the comparison and what notes said of them: it prints the same, and says so', () => {
    for (const path of ['content/runs/larch-rated.md', 'content/runs/larch-fast.md', COMPARISON, FAST_LOG]) rmSync(at(path));
    writeNote('', `What it was is [on record](../../record-copies/${copy.id}/).`);
    builds();
    const { own: part, since, before } = partsOf(page());
    expect(part === own).toBe(true);
    expect(before).toContain('What changed since');
    expect(since).toContain('Runs that are no longer on this site');
    for (const { title } of copy.record.runs) expect(since).toContain(title);
    expect(since).toContain('The comparison that this was made from is no longer on this site.');
    expect(existsSync(at('dist/comparisons'))).toBe(false);
    expect(readdirSync(at('dist/runs'))).toEqual(['index.html', 'index.json']);
    const downloads = readdirSync(at(`dist/record-copies/${copy.id}/plots`));
    expect(downloads.filter((name) => name.endsWith('.svg')).length).toBeGreaterThan(3);
  });

  it('when it is taken away itself, the note that leads to it stops the build', () => {
    rmSync(at(copyFile(copy.id)));
    const { code, err } = project.run('build');
    expect(code).toBe(1);
    expect(err).toContain(`${NOTE}:7:`);
    expect(err).toContain('[dead-link]');
    expect(page().includes(own)).toBe(true);
  });
});
