/** The reader of results: all that pages import. It reads what stage 1 wrote and computes nothing. */
import { robotsText, sitemapFiles } from './discovery/sitemap.ts';
import type { FeedSite } from './feeds/atom.ts';
import { correctionsFeed } from './feeds/corrections-feed.ts';
import { notesFeed } from './feeds/notes-feed.ts';
import { manifestPath, readManifest } from './project/manifest.ts';
import { type Feeds, MANIFEST_VARIABLE, type Manifest, type PageModel, SCOPE_VARIABLE } from './results.ts';
import { publicationFolder } from './store/places.ts';
import { storedBytes } from './store/store.ts';

/** Astro runs with the project folder as its working folder, in build and in dev. */
const root = publicationFolder();

type ModelOf<K extends PageModel['kind']> = Extract<PageModel, { kind: K }>;

/** Only the dev server asks for drafts and held-back notes, in its own process; whatever else reads results gets a build's site. */
const inDev = process.env[SCOPE_VARIABLE] === 'all';

function manifest(): Manifest {
  if (!inDev) return JSON.parse(blobText(process.env[MANIFEST_VARIABLE] ?? 'no-manifest')) as Manifest;
  const found = readManifest(root, 'all');
  if (found === undefined) throw new Error(`${manifestPath(root, 'all')} is missing or damaged: start with \`npm run dev\``);
  return found;
}

/** Text from the store, held to its digest: no page prints what was damaged. */
function blobText(blob: string): string {
  return Buffer.from(storedBytes(root, blob)).toString('utf8');
}

/** The pages of a kind for `getStaticPaths`: the key covers all that a page prints, because it is the digest of just that.
 * `prefix` and `suffix` are what the route has around its parameter. */
export function pathsOf<P extends string>(kind: PageModel['kind'], parameter: P, prefix: string, suffix = '') {
  return manifest()
    .pages.filter((page) => page.kind === kind && page.path.startsWith(prefix) && page.path.endsWith(suffix))
    .map(({ path, blob }) => ({
      params: { [parameter]: path.slice(prefix.length, path.length - suffix.length).replace(/\/$/, '') || undefined } as Record<
        P,
        string | undefined
      >,
      props: { blob },
      cacheKey: blob,
    }));
}

/** Models read in this process: Astro reads one for each page that it prints and none for a page that it uses again. */
const counted = globalThis as { soakproofPagesPrinted?: number };

/** The model of a page. */
export function readModel<K extends PageModel['kind']>(_kind: K, blob: string): ModelOf<K> {
  counted.soakproofPagesPrinted = (counted.soakproofPagesPrinted ?? 0) + 1;
  return JSON.parse(blobText(blob)) as ModelOf<K>;
}

/** The SVG with a digest that a page's model names. */
export function drawing(blob: string): string {
  return blobText(blob);
}

/** The feeds as XML, by the names of their files; none where nothing is published. */
export function feedsXml(site: Omit<FeedSite, 'self'>): Map<string, string> {
  const { feed } = manifest();
  if (feed === null) return new Map();
  const { corrections, notes } = JSON.parse(blobText(feed)) as Feeds;
  const at = (name: string) => ({ ...site, self: `${site.address}${name}.xml` });
  return new Map([
    ['corrections', correctionsFeed(corrections, at('corrections'))],
    ['notes', notesFeed(notes, at('notes'))],
  ]);
}

/** The sitemap as XML, by the names of its files, of a site at this address. */
export function sitemaps(address: string): Map<string, string> {
  return sitemapFiles(manifest().pages, address);
}

/** What robots are told of a site at this address. */
export const robots = robotsText;

/** Problems of the last run of stage 1, for dev's pages. A build with errors prints no page. */
export function problemsInDev(): Manifest['problems'] {
  return inDev ? manifest().problems : [];
}
