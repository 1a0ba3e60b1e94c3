import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { addressOf, placeOf, siteFacts } from '../../../src/compute/project/site-facts.ts';
import { settingsOf } from '../../../src/compute/project/site-options.ts';
import { recording } from '../../../src/compute/store/memo.ts';
import { openStore } from '../../../src/compute/store/store.ts';

const root = mkdtempSync(join(tmpdir(), 'soakproof-facts-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

const UNNAMED = { ...settingsOf({}), base: '/', address: '' };

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
    facts: {
      ...settingsOf({ title: 'Bench notes', byline: 'Readings' }),
      base: '/r/',
      address: 'https://bench.example/r/',
    },
    problems: [],
  });
  const used = recording(openStore(root));
  expect(await siteFacts(root, used, config)).toEqual(read);
  expect(used.used().entries.map((key) => openStore(root).get(key))).toEqual([read]);
});

test('compute/site-facts: a changed configuration is run anew in the same process', async () => {
  const at = (site: string) => `export default { site: '${site}' };`;
  expect((await facts(at('https://a.example'))).facts.address).toBe('https://a.example/');
  expect((await facts(at('https://b.example'))).facts.address).toBe('https://b.example/');
});

test('compute/site-facts: without one the site has no name, and one that cannot be run is told', async () => {
  expect(await siteFacts(root, openStore(root), '')).toEqual({ facts: UNNAMED, problems: [] });
  const { facts: none, problems } = await facts("throw new Error('no such thing');");
  expect(none).toEqual(UNNAMED);
  expect(problems).toEqual([
    {
      severity: 'error',
      rule: 'configuration',
      place: { file: 'astro.config.mjs', line: 1, column: 1 },
      found: 'this file cannot be run: no such thing',
      remedy: 'mend it; `npm run new -- FOLDER` writes one that works into another folder',
    },
  ]);
});

test('compute/site-facts: what is wrong with an option is told where it stands', async () => {
  const { problems } = await facts(`const publication = (named) => ({ integrations: [{ named }] });

export default publication({
  title: 'Bench notes',
  // licence: { data: 'nothing' },
  licence: { words: 'CC-BY-4.0', data: 'CC0' },
  bylin: 'Readings',
});
`);
  expect(problems).toEqual([
    {
      severity: 'error',
      rule: 'unknown-licence',
      place: { file: 'astro.config.mjs', line: 6, column: 34, endColumn: 38 },
      found: '`licence.data` is "CC0"',
      expected: 'an id of the SPDX licence list, as CC-BY-4.0 or CC0-1.0',
    },
    {
      severity: 'error',
      rule: 'unknown-option',
      place: { file: 'astro.config.mjs', line: 7, column: 3, endColumn: 8 },
      found: 'a publication has no option `bylin`',
      expected: 'title, byline, site, base, contact, licence, funding, about, navigation, accent, harmless, guide',
      remedy: 'did you mean `byline`?',
    },
  ]);
});

test('compute/site-facts: an option that is made elsewhere is told at the beginning of the file', () => {
  expect(placeOf("publication({ 'a[(': 1 });", ['a[(']).column).toBe(15);
  expect(placeOf('export default publication(options);', ['title'])).toEqual({ file: 'astro.config.mjs', line: 1, column: 1 });
});
