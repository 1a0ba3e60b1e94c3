import { describe, expect, it } from 'vitest';
import { correctionsFeed } from '../../../src/compute/feeds/corrections-feed.ts';
import type { FeedModel } from '../../../src/compute/results.ts';

const SITE = { title: 'Bench & co', byline: '', address: 'https://bench.example/', self: 'https://bench.example/corrections.xml' };
const ENTRY = {
  title: 'A <faster> Larch',
  path: 'notes/larch/',
  since: '2026-05-02',
  number: 'fast.peak_temperature',
  label: 'peak temperature of fast',
  was: '71.3 °C',
  is: '72.1 °C',
  reason: 'The probe was read twice.',
  sentence: 'It reached 71.3 °C.',
};
const feed = (model: FeedModel) => correctionsFeed(model, SITE);

// RFC 4287, 4.1.1 and 4.1.2: what a feed and each of its entries must contain.
const REQUIRED_OF_FEED = [
  /<id>[^<]+<\/id>/,
  /<title>[^<]+<\/title>/,
  /<updated>[^<]+<\/updated>/,
  /<author>\s*<name>[^<]+<\/name>/,
];
// RFC 3339, 5.6, as RFC 4287, 3.3 asks.
const DATE = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d+)?(?:Z|[+-]\d\d:\d\d)$/;

describe('compute/feeds/corrections-feed', () => {
  it('has the parts that RFC 4287 requires, in the feed and in each entry', () => {
    const xml = feed({ entries: [ENTRY], updated: '2026-05-02' });
    const [head = '', entry = ''] = xml.split('<entry>');
    expect(head).toContain('<feed xmlns="http://www.w3.org/2005/Atom">');
    for (const part of REQUIRED_OF_FEED) expect(head).toMatch(part);
    expect(head).toContain('<link rel="self" href="https://bench.example/corrections.xml"/>');
    expect(entry).toMatch(/<id>urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}<\/id>/);
    expect(entry).toMatch(/<title[^>]*>.*71\.3 °C is now 72\.1 °C.*<\/title>/);
    expect(entry).toContain('A &lt;faster&gt; Larch');
    expect(entry).toContain('href="https://bench.example/notes/larch/"');
    for (const [, date] of xml.matchAll(/<updated>([^<]+)<\/updated>/g)) expect(date).toMatch(DATE);
    expect(xml).toContain('2026-05-02T00:00:00.000Z');
    expect(xml).toContain('The probe was read twice.');
  });

  it('keeps the id of a correction, and gives another one another', () => {
    const ids = (model: FeedModel) => [...feed(model).matchAll(/<id>(urn:[^<]+)<\/id>/g)].map(([, id]) => id);
    const two = ids({ entries: [ENTRY, { ...ENTRY, is: '73.0 °C' }], updated: '2026-05-02' });
    expect(new Set(two).size).toBe(2);
    expect(ids({ entries: [ENTRY], updated: '2026-06-02' })[0]).toBe(two[0]);
    // Corrected to and fro: the same numbers on another day. And the same correction, wherever it stands in the page.
    expect(ids({ entries: [{ ...ENTRY, since: '2026-05-09' }], updated: '2026-06-02' })[0]).not.toBe(two[0]);
    expect(ids({ entries: [{ ...ENTRY, path: `${ENTRY.path}#corrected:3` }], updated: '2026-06-02' })[0]).toBe(two[0]);
  });

  it('depends on no clock: empty, it has the date that it is given', () => {
    expect(feed({ entries: [], updated: '2026-03-21' })).toContain('<updated>2026-03-21T00:00:00.000Z</updated>');
  });
});
