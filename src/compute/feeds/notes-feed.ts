/** The feed of notes: Atom (RFC 4287), with the authors' dates. */

import type { NoteEntry, NotesFeed } from '../models/discovery.ts';
import type { Highlight } from '../results.ts';
import { articleHtml } from './article.ts';
import { atomFeed, type FeedSite, midnight, urn } from './atom.ts';
import { escaped } from './escaped.ts';

/** The feed as XML. An entry keeps its id through every build: it hangs on the site's title and the note's address alone. */
export function notesFeed({ entries, updated }: NotesFeed, site: FeedSite): string {
  const items = entries.map((entry) => ({
    id: urn([site.title, entry.path]),
    title: escaped(entry.title),
    path: entry.path,
    date: midnight(entry.updated),
    published: midnight(entry.date),
    description: summaryHtml(entry),
    ...(entry.article.length > 0 ? { content: articleHtml(entry, site.address) } : {}),
  }));
  return atomFeed(site, { kind: ['notes'], title: site.title, description: site.byline, updated }, items);
}

function summaryHtml({ summary, highlights: shown, invented }: NoteEntry): string {
  const list = shown.map((highlight) => `<li>${escaped(highlightText(highlight))}</li>`).join('');
  return [
    summary === '' ? '' : `<p>${escaped(summary)}</p>`,
    list === '' ? '' : `<ul>${list}</ul>`,
    invented ? '<p>Everything in this note is invented: device, maker, people and numbers.</p>' : '',
  ].join('');
}

function highlightText({ label, run, shown, uncertainty }: Highlight): string {
  const value = [shown, uncertainty].filter((part) => part !== '').join(uncertainty.startsWith('±') ? ' ' : ', ');
  return `${run === '' ? label : `${label} (${run})`}: ${value}`;
}
