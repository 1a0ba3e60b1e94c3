import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { addressOf, siteFacts, unknownOptions } from '../../../src/compute/project/site-facts.ts';
import { recording } from '../../../src/compute/store/memo.ts';
import { openStore } from '../../../src/compute/store/store.ts';

const root = mkdtempSync(join(tmpdir(), 'soakproof-facts-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

const UNNAMED = { title: '', byline: '', guide: false, base: '/', address: '' };

async function facts(config: string) {
  writeFileSync(join(root, 'astro.config.mjs'), config);
  return siteFacts(root, openStore(root), config);
}

test('compute/site-facts: base and address end in a slash', () => {
  expect(addressOf('https://bench.example', '/reports')).toEqual({ base: '/reports/', address: 'https://bench.example/reports/' });
  expect(addressOf(undefined, '/')).toEqual({ base: '/', address: '' });
});

test('compute/site-facts: what the configuration says is read by running it, and stored', async () => {
  const named = `{ named: { title: 'Bench notes', byline: 'Readings' } }`;
  const config = `export default { site: 'https://bench.example', base: '/r', integrations: [{}, ${named}] };`;
  const read = await facts(config);
  expect(read).toEqual({
    title: 'Bench notes',
    byline: 'Readings',
    guide: false,
    base: '/r/',
    address: 'https://bench.example/r/',
  });
  const used = recording(openStore(root));
  expect(await siteFacts(root, used, config)).toEqual(read);
  expect(used.used().entries.map((key) => openStore(root).get(key))).toEqual([read]);
});

test('compute/site-facts: a changed configuration is run anew in the same process', async () => {
  const at = (site: string) => `export default { site: '${site}' };`;
  expect((await facts(at('https://a.example'))).address).toBe('https://a.example/');
  expect((await facts(at('https://b.example'))).address).toBe('https://b.example/');
});

test('compute/site-facts: without one, or with one that cannot be run, the site has no name', async () => {
  expect(await siteFacts(root, openStore(root), '')).toEqual(UNNAMED);
  expect(await facts('export default {')).toEqual(UNNAMED);
});

test('compute/site-facts: an option that a publication does not have is an error where it stands', () => {
  const config = (lines: string) => `import { publication } from 'soakproof';\n\nexport default publication({\n${lines}});\n`;
  expect(unknownOptions(config("  title: 'Bench notes',\n  // colour: 'red',\n  base: '/',\n"))).toEqual([]);
  expect(unknownOptions(config("  title: 'Bench notes',\n  bylin: 'Readings',\n"))).toEqual([
    {
      severity: 'error',
      rule: 'unknown-option',
      place: { file: 'astro.config.mjs', line: 5, column: 3, endColumn: 8 },
      found: 'a publication has no option `bylin`',
      expected: 'title, byline, guide, site, base',
      remedy: 'mend its name, or remove the line',
    },
  ]);
  expect(unknownOptions('export default {};')).toEqual([]);
});
