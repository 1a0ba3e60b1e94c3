import { describe, expect, it } from 'vitest';
import { downloadOf, jsonLd, licenceOf, publisherOf } from '../../../src/compute/linked-data/json-ld.ts';
import type { SiteFacts } from '../../../src/compute/project/site-facts.ts';

const SITE = { title: 'Bench notes', address: 'https://bench.example', base: '/soak/' } as SiteFacts;
const FILE = {
  what: 'log as it came',
  name: 'fast.CSV',
  path: 'runs/fast/data/fast.CSV',
  sha256: 'a'.repeat(64),
  bytes: 171_000,
};

describe('compute/linked-data/json-ld', () => {
  // HTML, "Restrictions for contents of script elements": `<!--`, `<script` and `</script` must not stand in one.
  it('holds no sign that could end or open an element, and reads back as it was', () => {
    const name = 'A </script><script>x</script> & <!-- > \u2028 \u2029 "quoted" \\';
    const text = jsonLd({ '@type': 'Dataset', name });
    expect(text).not.toMatch(/[<\u2028\u2029]/);
    expect(JSON.parse(text)).toEqual({ '@context': 'https://schema.org', '@type': 'Dataset', name });
  });

  it('offers a file where it stands, with digest, size and kind', () => {
    expect(downloadOf({ ...SITE, address: 'https://bench.example/' }, FILE)).toEqual([
      {
        '@type': 'DataDownload',
        name: 'log as it came',
        contentUrl: 'https://bench.example/runs/fast/data/fast.CSV',
        encodingFormat: 'text/csv',
        contentSize: '171000 B',
        sha256: FILE.sha256,
      },
    ]);
  });

  it('offers a file that is kept elsewhere there, one of a kind that it does not know without it, and else nothing', () => {
    const elsewhere = 'https://files.example/fast.log';
    expect(downloadOf(SITE, { ...FILE, name: 'fast.log', path: null, elsewhere })).toMatchObject([{ contentUrl: elsewhere }]);
    expect(downloadOf(SITE, { ...FILE, name: 'fast.log', path: null, elsewhere })[0]).not.toHaveProperty('encodingFormat');
    expect(downloadOf(SITE, { ...FILE, path: null })).toEqual([]);
  });

  it('says nothing of a publisher without a name or of terms that nobody stated', () => {
    expect(publisherOf({ ...SITE, title: '' })).toEqual({});
    expect(publisherOf({ ...SITE, address: '' })).toEqual({ publisher: { '@type': 'Organization', name: 'Bench notes' } });
    expect(licenceOf(undefined)).toEqual({});
    expect(licenceOf({ title: 'Ask the author' })).toEqual({ license: 'Ask the author' });
    const url = 'https://licences.example/by';
    expect(licenceOf({ title: 'By', url })).toEqual({ license: url });
  });
});
