/** Where the sitemap is, for robots; printed where the site's own address is known. They look for it at the root of a host only. */
import { robots } from '../compute/read-results.ts';

export const getStaticPaths = () => (SITE.address === '' ? [] : [{ params: { robots: 'robots' } }]);

export const GET = () => new Response(robots(SITE.address), { headers: { 'Content-Type': 'text/plain; charset=utf-8' } });
