import { mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, inject, it } from 'vitest';
import { MANIFEST_FORMAT, type Manifest } from '../../src/compute/results.ts';
import { standingSite } from '../../src/print/standing-site.ts';
import { treeDigests } from '../../src/print/tree-digests.ts';

const CONFIGURED = "import { publication } from 'soakproof';\nexport default publication({ title: 'T', byline: 'B' });\n";
const MANIFEST: Manifest = {
  format: MANIFEST_FORMAT,
  scope: 'site',
  inputs: { code: 'c', content: 'd', data: [] },
  ...{ pages: [], files: [], gathered: {}, stills: {}, feed: null, problems: [], present: '', blobs: [], entries: [] },
};

let root: string;
const dist = (name: string) => join(root, 'dist', name);
const stands = (manifest = MANIFEST) => standingSite(root, manifest).stands();

function printed(configured: string): void {
  writeFileSync(join(root, 'astro.config.mjs'), configured);
  standingSite(root, MANIFEST).remember(treeDigests(join(root, 'dist')));
}

beforeEach(() => {
  root = mkdtempSync(join(inject('scratch'), 'standing-'));
  for (const folder of ['.cache', 'dist', 'dist/runs']) mkdirSync(join(root, folder));
  writeFileSync(dist('index.html'), 'home');
  writeFileSync(dist('runs/index.html'), 'runs');
  printed(CONFIGURED);
});
afterEach(() => rmSync(root, { recursive: true }));

describe('print/standing-site', () => {
  it('stands where nothing has changed, also in a copy with other times', () => {
    utimesSync(dist('index.html'), 1, 1);
    expect(stands()).toBe(true);
  });

  it.each<[string, () => void]>([
    [
      'a byte of a page is another, its size and time as before',
      () => {
        writeFileSync(dist('index.html'), 'hone');
        utimesSync(dist('index.html'), 1, 1);
      },
    ],
    ['a file is gone', () => rmSync(dist('runs/index.html'))],
    ['a file has another name', () => renameSync(dist('index.html'), dist('home.html'))],
    ['a file has come', () => writeFileSync(dist('CNAME'), 'x')],
    [
      'a link stands in the place of a file',
      () => {
        renameSync(dist('index.html'), join(root, 'elsewhere'));
        symlinkSync(join(root, 'elsewhere'), dist('index.html'));
      },
    ],
    ['all of it is gone', () => rmSync(join(root, 'dist'), { recursive: true })],
    [
      'what was remembered is damaged',
      () => {
        const path = join(root, '.cache', 'standing.json');
        writeFileSync(path, readFileSync(path, 'utf8').replace('"site":"', '"site":"0'));
      },
    ],
    [
      'the configuration now imports a file of its own',
      () => writeFileSync(join(root, 'astro.config.mjs'), `import './theme.mjs';\n${CONFIGURED}`),
    ],
  ])('does not where %s', (_what, change) => {
    change();
    expect(stands()).toBe(false);
  });

  it('does not where the manifest is another', () => {
    expect(stands({ ...MANIFEST, inputs: { ...MANIFEST.inputs, content: 'e' } })).toBe(false);
  });

  it.each([
    "import { title } from './title.mjs';\n",
    "const title = process.env.TITLE ?? '';\n",
    "const { title } = await import('some-package');\n",
    "import more from 'an-integration';\n",
    // A word in a comment or a title costs a look; a program that is taken for a word would leave an old site.
    "// A host's process may set it.\n",
    // biome-ignore lint/suspicious/noTemplateCurlyInString: the text of a configuration
    'const site = `https://${HOST}`;\n',
    "const { a } = await import/**/('./x.mjs');\n",
    'const title = crypto.randomUUID();\n',
  ])('never does with a configuration that hangs on more than its text: %s', (line) => {
    printed(line + CONFIGURED);
    expect(stands()).toBe(false);
  });
});
