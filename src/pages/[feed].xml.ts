/** The feed of corrections, printed where a note is published. */
import { feedXml, hasFeed } from '../compute/read-results.ts';

export const getStaticPaths = () => (hasFeed() ? [{ params: { feed: 'corrections' } }] : []);

export const GET = ({ site }: { readonly site: URL | undefined }) => {
  const address = site === undefined ? SITE.base : new URL(SITE.base, site).href;
  const xml = feedXml({ title: SITE.title, address, self: `${address}corrections.xml` });
  return new Response(xml, { headers: { 'Content-Type': 'application/atom+xml; charset=utf-8' } });
};
