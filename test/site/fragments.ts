/** Every page of a built site: are its ids unique, and has every address with a fragment its target? */
import { existsSync, globSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';

export interface Amiss {
  /** `runs/x/index.html: peak_temperature` */
  readonly twice: readonly string[];
  /** `notes/x/index.html: /runs/x/#gone` */
  readonly targetless: readonly string[];
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
  return { twice, targetless };
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
function hasTarget(file: string, href: string, { pages, dist, base }: Site): boolean {
  const [path = '', fragment = ''] = href.split('#');
  if (fragment === '' || /^[a-z]+:|^\/\//.test(path)) return true;
  const at = path === '' ? `/${file}` : posix.resolve('/', posix.dirname(file), path.replace(/^\//, base));
  const below = decodeURIComponent(at.startsWith(base) ? at.slice(base.length) : at.slice(1));
  const page = pages.get(below) ?? pages.get(posix.join(below, 'index.html'));
  return page === undefined ? existsSync(join(dist, below)) : page.ids.includes(decodeURIComponent(fragment));
}
