import { describe, expect, it } from 'vitest';
import { HEADERS, headersJson, headersOf } from '../../../src/compute/outgoing/headers.ts';

describe('compute/outgoing/headers', () => {
  it('names the characters of text, lets nobody guess a type, and lets nobody frame a page', () => {
    expect(headersOf('runs/a/data/soak.csv', HEADERS)).toEqual({
      'Content-Type': 'text/csv; charset=utf-8',
      'Content-Security-Policy': "frame-ancestors 'none'",
      'X-Content-Type-Options': 'nosniff',
      'Referrer-Policy': 'same-origin',
      'Cache-Control': 'no-cache',
    });
    expect(headersOf('SOAK.CSV', HEADERS)['Content-Type']).toBe('text/csv; charset=utf-8');
    expect(headersOf('a.csv.gz', HEADERS)['Content-Type']).toBe('application/gzip');
    expect(headersOf('a.json', HEADERS)['Content-Type']).toBe('application/json');
    expect(headersOf('a.md', HEADERS)['Content-Type']).toBe('text/markdown; charset=utf-8');
  });

  it('lets browsers keep what is named by its digest, and nothing else', () => {
    expect(headersOf('assets/sheet.1a2b.css', HEADERS)['Cache-Control']).toBe('public, max-age=31536000, immutable');
    expect(headersOf('notes/assets/x.css', HEADERS)['Cache-Control']).toBe('no-cache');
  });

  it('takes a feed for a feed, and a map of the site for plain XML', () => {
    expect(headersOf('notes.xml', HEADERS)['Content-Type']).toBe('application/atom+xml');
    expect(headersOf('sitemap.xml', HEADERS)['Content-Type']).toBe('application/xml');
  });

  it('takes no character of a path for a sign of its own', () => {
    expect(headersOf('axcsv', [{ files: '*.csv', set: { A: 'b' } }])).toEqual({});
  });

  it('says where the site stands', () => {
    expect(JSON.parse(headersJson('/reports/'))).toEqual({ format: 1, base: '/reports/', headers: HEADERS });
  });
});
