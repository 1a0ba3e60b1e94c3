import { describe, expect, it } from 'vitest';
import { notesFeed } from '../../../src/compute/feeds/notes-feed.ts';
import type { NoteEntry, NotesFeed } from '../../../src/compute/models/discovery.ts';

const SITE = {
  title: 'Bench & co',
  byline: 'Invented <tests>',
  address: 'https://bench.example/',
  self: 'https://bench.example/notes.xml',
};
const ENTRY: NoteEntry = {
  title: 'A <faster> Larch',
  path: 'notes/larch/',
  date: '2026-03-21',
  updated: '2026-05-02',
  summary: 'An hour & a half of load.',
  highlights: [{ label: 'peak temperature', run: 'Fast setting', shown: '72.1 °C', uncertainty: '± 1.2 °C (95 %)' }],
  invented: true,
  beware: 'raised voltage',
  article: [
    { title: 'The faster one', alt: 'A line that rises & stays.', picture: 'notes/larch/plots/trace.png' },
    '<h2 id="heat">Heat</h2><p>It peaks at <a class="held" id="a-b" href="#held:a-b" data-n="1">72.1 °C</a>, see <a href="/runs/fast/">the run</a>.</p><pre><code>grep id="7" href="x"</code></pre>',
  ],
};
const feed = (model: NotesFeed, site = SITE) => notesFeed(model, site);
const ONE: NotesFeed = { entries: [ENTRY], updated: '2026-05-02' };

// RFC 4287, 4.1.1: a feed must contain exactly one id, title and updated, and an author where its entries have none.
const ONCE_IN_FEED = [
  /<id>[^<]+<\/id>/g,
  /<title>[^<]+<\/title>/g,
  /<updated>[^<]+<\/updated>/g,
  /<author>\s*<name>[^<]+<\/name>/g,
];
// 4.1.2: an entry must contain exactly one id, title and updated, and an alternate link where it has no content.
const ONCE_IN_ENTRY = [/<id>[^<]+<\/id>/g, /<title[ >]/g, /<updated>[^<]+<\/updated>/g, /<link href="[^"]+"\/>/g, /<summary[ >]/g];
// RFC 3339, 5.6, as RFC 4287, 3.3 asks.
const DATE = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d+)?(?:Z|[+-]\d\d:\d\d)$/;

describe('compute/feeds/notes-feed', () => {
  it('has the parts that RFC 4287 requires, in the feed and in each entry', () => {
    const [head = '', entry = ''] = feed(ONE).split('<entry>');
    expect(head).toContain('<feed xmlns="http://www.w3.org/2005/Atom">');
    for (const part of ONCE_IN_FEED) expect(head.match(part)).toHaveLength(1);
    for (const part of ONCE_IN_ENTRY) expect(entry.match(part)).toHaveLength(1);
    expect(head).toContain('<link rel="self" href="https://bench.example/notes.xml"/>');
    expect(entry).toContain('<link href="https://bench.example/notes/larch/"/>');
    for (const [, date] of feed(ONE).matchAll(/<(?:updated|published)>([^<]+)</g)) expect(date).toMatch(DATE);
  });

  it('leads to the host that serves it where the site names no address', () => {
    const xml = feed(ONE, { ...SITE, address: '/reports/', self: '/reports/notes.xml' });
    expect([...xml.matchAll(/<link [^>]*href="([^"]*)"/g)].map(([, to]) => to)).toEqual([
      '/reports/',
      '/reports/notes.xml',
      '/reports/notes/larch/',
    ]);
    expect(xml).toContain('src="/reports/notes/larch/plots/trace.png"');
    expect(xml.split('<entry>')[0]).toMatch(/<id>urn:uuid:[0-9a-f-]{36}<\/id>/);
    expect(xml).not.toContain('invalid');
  });

  it('says when a note came out and when it was changed, its summary, its highlights, and that it is invented', () => {
    const entry = feed(ONE).split('<entry>')[1]!;
    expect(entry).toContain('<published>2026-03-21T00:00:00.000Z</published>');
    expect(entry).toContain('<updated>2026-05-02T00:00:00.000Z</updated>');
    expect(entry).toContain('<p>An hour &amp; a half of load.</p>');
    expect(entry).toContain('<li>peak temperature (Fast setting): 72.1 °C ± 1.2 °C (95 %)</li>');
    expect(entry).toContain('Everything in this note is invented');
    expect(entry).toContain('A &lt;faster&gt; Larch');
  });

  it('has the whole article, its plots as pictures, with addresses that hold in any reader', () => {
    const content = /<content type="html"><!\[CDATA\[([\s\S]*?)\]\]><\/content>/.exec(feed(ONE))![1]!;
    expect(content).toBe(
      '<p>Everything in this note is invented: device, maker, people and numbers.</p><p>Caution: raised voltage.</p>' +
        '<figure><img src="https://bench.example/notes/larch/plots/trace.png" alt="A line that rises &amp; stays."><figcaption>The faster one</figcaption></figure>' +
        '<h2>Heat</h2><p>It peaks at <a href="https://bench.example/notes/larch/#held:a-b">72.1 °C</a>, see <a href="https://bench.example/runs/fast/">the run</a>.</p><pre><code>grep id="7" href="x"</code></pre>',
    );
  });

  it('shows a picture by the file that every reader can show, and names no address that leads nowhere from a reader', () => {
    const html =
      '<p><a class="whole" href="/notes/larch/a.jpg"><picture><source type="image/webp" srcset="/notes/larch/a-480.webp 480w" sizes="38rem"><img src="/notes/larch/a-960.jpg" width="9" height="6" alt="A > B"></picture><svg class="marks" aria-hidden="true"><circle cx="46%" cy="44%" r="11"/><text x="46%" y="44%" dy="5">1</text></svg></a></p>';
    const entry = feed({ ...ONE, entries: [{ ...ENTRY, article: [html] }] }).split('<entry>')[1]!;
    expect(entry).toContain(
      '<picture><img src="https://bench.example/notes/larch/a-960.jpg" width="9" height="6" alt="A > B"></picture></a>',
    );
    const addresses = [...entry.matchAll(/ (?:href|src|srcset)="([^"]*)"/g)].map(([, address]) => address!);
    expect(addresses.length).toBeGreaterThan(2);
    expect(addresses.filter((address) => !address.startsWith('https://'))).toEqual([]);
  });

  // RFC 4287, 4.2.6: an id never changes, also when the feed moves or the entry is edited.
  it('keeps the id of a note through an edit, a correction and a move of the site; another note has another', () => {
    const id = (model: NotesFeed, site = SITE) => /<entry>[\s\S]*?<id>(urn:uuid:[0-9a-f-]{36})<\/id>/.exec(feed(model, site))![1];
    const edited = { ...ENTRY, title: 'Renamed', summary: '', updated: '2026-09-01', highlights: [] };
    const moved = { ...SITE, address: 'https://elsewhere.example/', self: 'https://elsewhere.example/notes.xml' };
    expect(id({ entries: [edited], updated: '2026-09-01' }, moved)).toBe(id(ONE));
    expect(id({ entries: [{ ...ENTRY, path: 'notes/other/' }], updated: '2026-05-02' })).not.toBe(id(ONE));
  });

  it('depends on no clock: empty, it has the date that it is given, and two are the same bytes', () => {
    expect(feed({ entries: [], updated: '2026-03-21' })).toContain('<updated>2026-03-21T00:00:00.000Z</updated>');
    expect(feed(ONE)).toBe(feed(structuredClone(ONE)));
    expect([...feed(ONE).matchAll(/\d{4}-\d\d-\d\dT/g)].map(([day]) => day).every((day) => /^2026-0[35]-/.test(day))).toBe(true);
  });
});
