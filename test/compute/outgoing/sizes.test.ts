import { describe, expect, it } from 'vitest';
import { changedSince, digestsOf } from '../../../src/compute/outgoing/changed.ts';
import { largeOnes, pageSizes } from '../../../src/compute/outgoing/sizes.ts';
import { siteOf } from './site.ts';

const MB = 2 ** 20;

describe('compute/outgoing/sizes', () => {
  const page = '<link rel="stylesheet" href="/r/a.css"><link rel="canonical" href="/r/b.zip"><img src="p.png"><img src="p.png">';

  it('counts a page with what it loads, each file once', () => {
    const files = siteOf({
      'index.html': page,
      'a.css': 'x'.repeat(100),
      'b.zip': new Uint8Array(5000),
      'p.png': new Uint8Array(1000),
    });
    expect(pageSizes(files, '/r/')).toEqual([{ path: 'index.html', bytes: page.length + 1100 }]);
  });

  it('takes any address', () => {
    const odd = '<img src="/caf%E9.png"><img src="https://[">';
    expect(pageSizes(siteOf({ 'index.html': odd }), '/')).toEqual([{ path: 'index.html', bytes: odd.length }]);
  });

  it('warns of what is too heavy for a reader, and too large for a host', () => {
    const told = largeOnes(
      siteOf({ 'index.html': page, 'p.png': new Uint8Array(6 * MB), 'big.csv': new Uint8Array(96 * MB) }),
      '/r/',
    );
    expect(told.map(({ severity, rule, place, found, expected }) => [`${severity} ${rule}`, place.file, found, expected])).toEqual([
      ['warning site-size', 'dist/index.html', 'this page loads 6.0 MB', '5.0 MB at most'],
      ['warning site-size', 'dist/big.csv', 'this file has 96.0 MB', '95.0 MB at most'],
    ]);
  });
});

describe('compute/outgoing/changed', () => {
  it('names what is new, what has other bytes, and what is gone', () => {
    const before = digestsOf(siteOf({ a: '1', b: '1', c: '1' }));
    expect(changedSince(before, digestsOf(siteOf({ d: '1', b: '2', c: '1' })))).toEqual({
      added: ['d'],
      changed: ['b'],
      gone: ['a'],
    });
  });
});
