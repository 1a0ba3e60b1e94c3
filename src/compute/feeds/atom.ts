/** What the feeds of a site have in common: Atom (RFC 4287), every date an author's own. */
import { Feed } from 'feed';
import { digest } from '../store/digest.ts';

/** Where the site stands and who speaks. */
export interface FeedSite {
  readonly title: string;
  readonly byline: string;
  /** Address of the site with its base, ending in a slash. */
  readonly address: string;
  /** Address of the feed itself. */
  readonly self: string;
}

/** What a feed says of itself; `kind` is part of its id where the site does not know its address. */
interface Head {
  readonly kind: readonly string[];
  readonly title: string;
  readonly description: string;
  /** A day. */
  readonly updated: string;
}

/** A feed without entries. The library marks their texts as HTML. */
export function openFeed(site: FeedSite, { kind, title, description, updated }: Head): Feed {
  return new Feed({
    id: URL.canParse(site.self) ? site.self : urn([site.title, ...kind]),
    title,
    description,
    link: site.address,
    feedLinks: { atom: site.self },
    author: { name: site.title },
    copyright: '',
    generator: 'Soakproof',
    updated: midnight(updated),
  });
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
