/** The feed of corrections: Atom (RFC 4287), with the dates that the author gave. */
import { Feed } from 'feed';
import { digest } from '../digest.ts';
import type { FeedModel } from '../results.ts';

/** Where the site stands and who speaks. */
export interface FeedSite {
  readonly title: string;
  readonly byline: string;
  /** Address of the site with its base, ending in a slash. */
  readonly address: string;
  /** Address of the feed itself. */
  readonly self: string;
}

/** The feed as XML: one entry a correction, newest first. Its own date is that of its newest entry, or of the newest publication. */
export function correctionsFeed({ entries, updated }: FeedModel, site: FeedSite): string {
  const feed = new Feed({
    id: URL.canParse(site.self) ? site.self : urn([site.title]),
    title: `${site.title}: corrections`,
    description: 'Published numbers that are no longer so: what they were, what they are, why, and since when',
    link: site.address,
    feedLinks: { atom: site.self },
    author: { name: site.title },
    copyright: '',
    generator: 'Soakproof',
    updated: midnight(updated),
  });
  for (const { title, path, since, was, is, reason, sentence, cue, number, label } of entries) {
    const where = cue === undefined ? '' : ` (at ${cue})`;
    feed.addItem({
      // Of what it says, not of where it stands in the page.
      id: urn([path.replace(/#.*$/, ''), since, number, was, is, cue ?? '', sentence]),
      // The library marks both texts as HTML.
      title: escaped(`${title}${where}: ${was} is now ${is}`),
      link: site.address + path,
      date: midnight(since),
      description: escaped(
        [
          sentence === '' ? '' : `It said: ${sentence}`,
          `${label === '' ? 'Was' : `${sentenceCase(label)}: was`} ${was}, is ${is}, since ${since}.`,
          reason,
        ]
          .filter((part) => part !== '')
          .join('\n'),
      ),
    });
  }
  return feed.atom1();
}

function sentenceCase(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Plain text as HTML. */
export function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}

/** The beginning of a day, in coordinated universal time: authors state days. */
export function midnight(day: string): Date {
  return new Date(`${day}T00:00:00Z`);
}

/** A name-based UUID of version 8 (RFC 9562): the same parts have it in every build. */
export function urn(parts: readonly string[]): string {
  const hex = digest(JSON.stringify(parts));
  const variant = '89ab'[Number.parseInt(hex[16]!, 16) & 3];
  return `urn:uuid:${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-${variant}${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}
