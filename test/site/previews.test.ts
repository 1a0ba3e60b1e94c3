import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { demonstrationSite } from './built-site.ts';
import { tree } from './project.ts';

const ADDRESS = 'https://bench.example/';
const built = demonstrationSite();
let site: Map<string, Buffer>;
/** What each page says of itself to whoever links to it, by its path. */
let said: Map<string, ReadonlyMap<string, string>>;

beforeAll(() => {
  site = tree(join(built.root, 'dist'));
  const pages = [...site].filter(([path]) => path.endsWith('.html'));
  said = new Map(pages.map(([path, bytes]) => [path.replace(/index\.html$/, ''), propertiesIn(bytes.toString('utf8'))]));
});

const plain = (text: string) =>
  text
    .replace(/&#(\d+);/g, (_, code) => String.fromCodePoint(Number(code)))
    .replaceAll('&quot;', '"')
    .replaceAll('&amp;', '&');

function propertiesIn(html: string): ReadonlyMap<string, string> {
  const tags = [...html.matchAll(/<meta property="(og:[^"]+)" content="([^"]*)">/g)];
  return new Map(tags.map(([, name, content]) => [name!, plain(content!)]));
}

const SHOWN = /^(?:notes\/[^/]+\/|comparisons\/[^/]+\/|record-copies\/[^/]+\/)$/;

describe('previews of links', () => {
  it('are given by notes, comparisons and record copies, and by no other page', () => {
    const [with_, without] = [true, false].map((has) =>
      [...said].filter(([, tags]) => tags.size > 0 === has).map(([path]) => path),
    );
    expect(with_!.length).toBeGreaterThan(3);
    expect(with_!.filter((path) => !SHOWN.test(path))).toEqual([]);
    expect(without!.filter((path) => SHOWN.test(path))).toEqual([]);
  });

  it('name the page and its picture by addresses of the site', () => {
    for (const [path, tags] of said) {
      if (tags.size === 0) continue;
      const html = site.get(`${path}index.html`)!.toString('utf8');
      expect(tags.get('og:type')).toBe('article');
      expect(tags.get('og:url')).toBe(ADDRESS + path);
      expect(tags.get('og:image')).toBe(`${ADDRESS}${path}share.png`);
      expect(html).toContain(`<meta name="description" content="${tags.get('og:description')}"`);
      expect(plain(/<title>([^<]*)<\/title>/.exec(html)![1]!)).toBe(`${tags.get('og:title')} · Bench notes`);
      const alt = tags.get('og:image:alt')!;
      expect(alt.length, path).toBeGreaterThan(40);
      expect(alt.length, path).toBeLessThanOrEqual(400);
      expect(alt).toMatch(/\.$/);
    }
  });

  it('have a PNG of 1200 × 630 (IHDR of ISO/IEC 15948), as the page says', () => {
    for (const [path, tags] of said) {
      if (tags.size === 0) continue;
      const png = site.get(`${path}share.png`)!;
      const size = [png.readUInt32BE(16), png.readUInt32BE(20)];
      expect(size, path).toEqual([1200, 630]);
      expect([tags.get('og:image:width'), tags.get('og:image:height')]).toEqual(size.map(String));
    }
  });
});
