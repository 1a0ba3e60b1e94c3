/** The reader of results: all that pages import. It reads what stage 1 wrote and computes nothing. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { manifestPath, readManifest } from './manifest.ts';
import { type Manifest, type PageModel, SCOPE_VARIABLE, type Scope } from './results.ts';

/** Astro runs with the project folder as its working folder, in build and in dev. */
const root = process.cwd();

/** Only the dev server asks for drafts and held-back notes, in its own process; whatever else reads results gets the site. */
const scope: Scope = process.env[SCOPE_VARIABLE] === 'all' ? 'all' : 'site';

type ModelOf<K extends PageModel['kind']> = Extract<PageModel, { kind: K }>;

function manifest(): Manifest {
  const found = readManifest(root, scope);
  if (found === undefined)
    throw new Error(`${manifestPath(root, scope)} is missing or damaged: start with \`npm run build\` or \`npm run dev\``);
  return found;
}

/** The pages of a kind for `getStaticPaths`: the key covers all that a page prints, because it is the digest of just that. */
export function pathsOf<P extends string>(kind: PageModel['kind'], parameter: P, prefix: string) {
  return manifest()
    .pages.filter((page) => page.kind === kind)
    .map(({ path, blob }) => ({
      params: { [parameter]: path.slice(prefix.length).replace(/\/$/, '') || undefined } as Record<P, string | undefined>,
      props: { blob },
      cacheKey: blob,
    }));
}

/** Models read in this process: Astro reads one for each page that it prints and none for a page that it uses again. */
const counted = globalThis as { soakproofPagesPrinted?: number };

/** The model of a page. */
export function readModel<K extends PageModel['kind']>(_kind: K, blob: string): ModelOf<K> {
  counted.soakproofPagesPrinted = (counted.soakproofPagesPrinted ?? 0) + 1;
  return JSON.parse(readFileSync(join(root, '.cache', 'blobs', blob), 'utf8')) as ModelOf<K>;
}

/** Problems of the last run of stage 1, for dev's pages. A build with errors prints no page. */
export function problemsInDev(): Manifest['problems'] {
  return scope === 'all' ? manifest().problems : [];
}
