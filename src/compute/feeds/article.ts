/** A whole note for readers of feeds: its words, its tables, its plots as pictures, with addresses that hold anywhere. */
import type { NoteEntry } from '../models/discovery.ts';
import { escaped } from './escaped.ts';

/** A tag of our own HTML, in whose text no `<` stands. */
const TAG = /<[a-z](?:"[^"]*"|[^">])*>/g;
/** What only the page itself has a use for. */
const OF_THE_PAGE = / (?:id|class|data-[a-z]+|tabindex|role|aria-[a-z]+)="[^"]*"/g;
/** Another choice of a picture: a reader of feeds knows no widths, and takes the file that every one can show. */
const CHOICE = /<source(?:"[^"]*"|[^">])*>/g;
/** The numbers of marked spots: only the page's style lays them over their picture. */
const MARKS = /<svg class="marks"[\s\S]*?<\/svg>/g;
const ADDRESS = / (href|src)="([^"]*)"/g;

/** HTML of the article. `site` is the site's address with its base. A held number leads to its place on the page. */
export function articleHtml({ path, article, beware, invented }: NoteEntry, site: string): string {
  const page = site + path;
  const head = [
    invented ? '<p>Everything in this note is invented: device, maker, people and numbers.</p>' : '',
    beware === '' ? '' : `<p>Caution: ${escaped(beware)}.</p>`,
  ];
  const pieces = article.map((piece) => {
    if (typeof piece === 'string')
      return piece
        .replaceAll(MARKS, '')
        .replaceAll(CHOICE, '')
        .replaceAll(TAG, (tag) => absolute(tag.replaceAll(OF_THE_PAGE, ''), page));
    const { title, alt, picture } = piece;
    return `<figure><img src="${escaped(site + picture)}" alt="${escaped(alt)}"><figcaption>${escaped(title)}</figcaption></figure>`;
  });
  return [...head, ...pieces].join('');
}

/** Addresses of a tag, resolved from the page. */
function absolute(tag: string, page: string): string {
  return tag.replaceAll(ADDRESS, (whole, name: string, address: string) => {
    const base = URL.canParse(page) ? page : undefined;
    return URL.canParse(address, base) ? ` ${name}="${new URL(address, base).href}"` : whole;
  });
}
