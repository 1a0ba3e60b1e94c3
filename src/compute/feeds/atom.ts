/** What the feeds of a site have in common: Atom (RFC 4287), every date an author's own. */
import { Feed, type Item } from 'feed';
import { digest } from '../store/digest.ts';

/** Where the site stands and who speaks. */
export interface FeedSite {
  readonly title: string;
  readonly byline: string;
  /** Address of the site with its base, ending in a slash; its base alone where it names no address. */
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

/** An entry; `path` is where its page stands, below the site. */
interface Entry extends Omit<Item, 'link'> {
  readonly path: string;
}

/** Stands for the host of a site that names no address: the library takes whole addresses only. A name that no host can have (RFC 2606). */
const ANY_HOST = 'http://site.invalid';

/** The feed as XML. The library marks its texts as HTML. Without an address of the site, links are references to the host that serves the feed. */
export function atomFeed(site: FeedSite, { kind, title, description, updated }: Head, entries: readonly Entry[]): string {
  const isNamed = URL.canParse(site.address);
  const whole = (address: string) => (isNamed ? address : ANY_HOST + address);
  const feed = new Feed({
    id: isNamed ? site.self : urn([site.title, ...kind]),
    title,
    description,
    link: whole(site.address),
    feedLinks: { atom: whole(site.self) },
    author: { name: site.title },
    copyright: '',
    generator: 'Soakproof',
    updated: midnight(updated),
  });
  for (const { path, ...entry } of entries) feed.addItem({ ...entry, link: whole(site.address + path) });
  const xml = feed.atom1();
  return isNamed ? xml : xml.replaceAll(/(?<=<link [^>]*href=")http:\/\/site\.invalid/g, '');
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
