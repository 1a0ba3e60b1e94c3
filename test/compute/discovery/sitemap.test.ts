import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { validateXML } from 'xmllint-wasm';
import { robotsText, sitemapFiles } from '../../../src/compute/discovery/sitemap.ts';
import type { PageEntry } from '../../../src/compute/results.ts';

// The protocol's own schema: https://www.sitemaps.org/schemas/sitemap/0.9/sitemap.xsd, kept in the fixtures with its source.
const SCHEMA = readFileSync(new URL('../../fixtures/sitemap/sitemap.xsd', import.meta.url), 'utf8');

const page = (kind: PageEntry['kind'], path: string, date?: string): PageEntry => ({ kind, path, blob: '', ...(date && { date }) });
const PAGES = [
  page('home', '', '2026-03-28'),
  page('run', 'runs/larch-fast/', '2026-03-22'),
  page('method', 'method/'),
  page('not-found', '404'),
];
const ADDRESS = "https://bench.example/o'clock & co/";
const faults = async (xml: string) => {
  const { valid, errors } = await validateXML({ xml: { fileName: 'sitemap.xml', contents: xml }, schema: [SCHEMA] });
  return valid ? [] : errors.map(({ message }) => message);
};
const locations = (xml: string) => [...xml.matchAll(/<loc>([^<]*)<\/loc>/g)].map(([, text]) => text);

describe('compute/discovery/sitemap', () => {
  it('is valid by the schema that sitemaps.org publishes', async () => {
    const xml = sitemapFiles(PAGES, ADDRESS).get('sitemap')!;
    expect(await faults(xml)).toEqual([]);
  });

  it('is held to that schema: a wrong date and a wrong order are found', async () => {
    const xml = sitemapFiles(PAGES, ADDRESS).get('sitemap')!;
    expect(await faults(xml.replace('2026-03-28', 'yesterday'))).not.toEqual([]);
    expect(await faults(xml.replace(/(<loc>[^<]*<\/loc>)(<lastmod>[^<]*<\/lastmod>)/, '$2$1'))).not.toEqual([]);
  });

  it('names every page but the one for missing addresses, absolute and escaped, with the date where there is one', () => {
    const xml = sitemapFiles(PAGES, ADDRESS).get('sitemap')!;
    expect(locations(xml)).toEqual([
      'https://bench.example/o&apos;clock%20&amp;%20co/',
      'https://bench.example/o&apos;clock%20&amp;%20co/method/',
      'https://bench.example/o&apos;clock%20&amp;%20co/runs/larch-fast/',
    ]);
    expect(xml.match(/<lastmod>/g)).toHaveLength(2);
    expect(xml).toMatch(/larch-fast\/<\/loc><lastmod>2026-03-22<\/lastmod>/);
  });

  // sitemaps.org, protocol: a file has at most 50,000 addresses; an index names the files.
  it('is parted where a site has more pages than one file may have', async () => {
    const many = Array.from({ length: 5 }, (_unused, at) => page('run', `runs/r-${at}/`));
    const files = sitemapFiles(many, 'https://bench.example/', 2);
    expect([...files.keys()]).toEqual(['sitemap', 'sitemap-1', 'sitemap-2', 'sitemap-3']);
    expect(files.get('sitemap')).toMatch(
      /^<\?xml [^>]*\?>\n<sitemapindex xmlns="http:\/\/www\.sitemaps\.org\/schemas\/sitemap\/0\.9">/,
    );
    expect(locations(files.get('sitemap')!)).toEqual([1, 2, 3].map((at) => `https://bench.example/sitemap-${at}.xml`));
    const parts = ['sitemap-1', 'sitemap-2', 'sitemap-3'].map((name) => files.get(name)!);
    for (const part of parts) expect(await faults(part)).toEqual([]);
    expect(parts.flatMap(locations)).toEqual(many.map(({ path }) => `https://bench.example/${path}`));
    expect(
      sitemapFiles(
        Array.from({ length: 50_001 }, (_unused, at) => page('run', `runs/r-${at}/`)),
        'https://b.example/',
      ).size,
    ).toBe(3);
  });

  it('is told to robots with its whole address, as sitemaps.org asks', () => {
    expect(robotsText('https://bench.example/')).toMatch(/^Sitemap: https:\/\/bench\.example\/sitemap\.xml$/m);
    expect(robotsText('https://bench.example/')).toMatch(/^User-agent: \*\nAllow: \/$/m);
  });
});
