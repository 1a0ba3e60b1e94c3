/** The feeds, printed where a note is published, and the sitemap, printed where the site's own address is known. */
import { feedsXml, sitemaps } from '../compute/read-results.ts';

/** Without an address of the site, links begin at the root of whatever host serves it. */
const address = SITE.address || SITE.base;

export const getStaticPaths = () => {
  const feeds = feedsXml({ title: SITE.title, byline: SITE.byline, address });
  const maps = SITE.address === '' ? new Map<string, string>() : sitemaps(SITE.address);
  return [
    ...[...feeds].map(([feed, xml]) => ({ params: { feed }, props: { xml, type: 'application/atom+xml' } })),
    ...[...maps].map(([feed, xml]) => ({ params: { feed }, props: { xml, type: 'application/xml' } })),
  ];
};

export const GET = ({ props: { xml, type } }: { readonly props: { readonly xml: string; readonly type: string } }) =>
  new Response(xml, { headers: { 'Content-Type': `${type}; charset=utf-8` } });
