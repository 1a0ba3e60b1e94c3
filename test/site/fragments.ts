/** Every page of a built site: are its ids unique, has every address with a fragment its target, and does another page lead to it? */
import { existsSync, globSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';

export interface Amiss {
  /** `runs/x/index.html: peak_temperature` */
  readonly twice: readonly string[];
  /** `notes/x/index.html: /runs/x/#gone` */
  readonly targetless: readonly string[];
  /** Pages that no other page links to; the home page and the one for what is missing need none. */
  readonly unlinked: readonly string[];
}

interface Page {
  readonly ids: readonly string[];
  readonly hrefs: readonly string[];
}

/** `dist`: folder of the site; `base`: where it stands on its host. */
export function amissIn(dist: string, base = '/'): Amiss {
  const pages = new Map(
    globSync('**/*.html', { cwd: dist }).map((file) => [file.replaceAll('\\', '/'), readPage(join(dist, file))]),
  );
  const twice = [...pages].flatMap(([file, { ids }]) =>
    ids.filter((id, index) => ids.indexOf(id) !== index).map((id) => `${file}: ${id}`),
  );
  const targetless = [...pages].flatMap(([file, { hrefs }]) =>
    hrefs.filter((href) => !hasTarget(file, href, { pages, dist, base })).map((href) => `${file}: ${href}`),
  );
  const linked = new Set(
    [...pages].flatMap(([file, { hrefs }]) =>
      hrefs.flatMap((href) => pageAt(file, href, { pages, dist, base }) ?? []).filter((to) => to !== file),
    ),
  );
  const unlinked = [...pages.keys()].filter((file) => !linked.has(file) && !['index.html', '404.html'].includes(file));
  return { twice, targetless, unlinked };
}

function readPage(file: string): Page {
  const html = readFileSync(file, 'utf8').replaceAll(/<script\b[^>]*>.*?<\/script>/gs, '');
  const values = (name: string) =>
    [...html.matchAll(new RegExp(`\\s${name}="([^"]*)"`, 'g'))].map(([, value = '']) => value.replaceAll('&amp;', '&'));
  return { ids: values('id'), hrefs: values('href') };
}

interface Site {
  readonly pages: ReadonlyMap<string, Page>;
  readonly dist: string;
  readonly base: string;
}

/** Only addresses of this site that name a place in a page can lack one. */
function hasTarget(file: string, href: string, site: Site): boolean {
  const fragment = href.split('#')[1] ?? '';
  if (fragment === '' || isElsewhere(href)) return true;
  const page = site.pages.get(pageAt(file, href, site) ?? '');
  return page === undefined
    ? existsSync(join(site.dist, below(file, href, site)))
    : page.ids.includes(decodeURIComponent(fragment));
}

/** The file of the page that a link leads to. */
function pageAt(file: string, href: string, site: Site): string | undefined {
  if (isElsewhere(href)) return undefined;
  const path = below(file, href, site);
  return [path, posix.join(path, 'index.html')].find((each) => site.pages.has(each));
}

function isElsewhere(href: string): boolean {
  return /^[a-z]+:|^\/\//.test(href);
}

/** Where a link leads to, below the folder of the site. */
function below(file: string, href: string, { base }: Site): string {
  const path = href.split(/[?#]/, 1)[0]!;
  const at = path === '' ? `/${file}` : posix.resolve('/', posix.dirname(file), path.replace(/^\//, base));
  return decodeURIComponent(at.startsWith(base) ? at.slice(base.length) : at.slice(1));
}
