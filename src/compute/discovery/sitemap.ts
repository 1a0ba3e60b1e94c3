/** The sitemap by which search engines find the pages: sitemaps.org, protocol 0.9. */

import { compareText } from '../../problem.ts';
import { escaped } from '../feeds/escaped.ts';
import type { PageEntry } from '../results.ts';

const NAMESPACE = 'http://www.sitemaps.org/schemas/sitemap/0.9';

/** Addresses that one file may have (sitemaps.org, protocol, "Using Sitemap index files"). */
const MOST = 50_000;

/**
 * The files by name, without extension: `sitemap`; for a site of more than 50,000 pages an index of that name, and `sitemap-1` and so on.
 * `address` is that of the site with its base, ending in a slash. The page for missing addresses stays out; `lastmod` is the authors' date.
 */
export function sitemapFiles(pages: readonly PageEntry[], address: string, most = MOST): Map<string, string> {
  const listed = pages.filter(({ kind }) => kind !== 'not-found').toSorted((a, b) => compareText(a.path, b.path));
  const urls = listed.map(({ path, date }) => entry('url', address + path, date));
  if (urls.length <= most) return new Map([['sitemap', xml('urlset', urls)]]);
  const parts = Array.from({ length: Math.ceil(urls.length / most) }, (_unused, at) => urls.slice(at * most, (at + 1) * most));
  const names = parts.map((_part, at) => `sitemap-${at + 1}`);
  const index = names.map((name) => entry('sitemap', `${address}${name}.xml`, undefined));
  return new Map([['sitemap', xml('sitemapindex', index)], ...parts.map((part, at) => [names[at]!, xml('urlset', part)] as const)]);
}

/** What robots are told: everything may be read, and where the sitemap is (RFC 9309; its line `Sitemap` comes from sitemaps.org). */
export function robotsText(address: string): string {
  return `User-agent: *\nAllow: /\n\nSitemap: ${address}sitemap.xml\n`;
}

function entry(element: 'url' | 'sitemap', location: string, date: string | undefined): string {
  const modified = date === undefined ? '' : `<lastmod>${date}</lastmod>`;
  return `<${element}><loc>${escaped(encodeURI(location))}</loc>${modified}</${element}>`;
}

function xml(root: 'urlset' | 'sitemapindex', entries: readonly string[]): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n<${root} xmlns="${NAMESPACE}">\n${entries.join('\n')}\n</${root}>\n`;
}
