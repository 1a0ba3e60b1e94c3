/** Links inside a printed site: each must lead to a file that is there, and to a part of the page that it names. */
import { error, type Problem } from '../../problem.ts';
import { placeIn, type SiteFile, textOf } from './site-files.ts';

/** Attributes that name another file. */
const LINK = /\s(?:href|src|poster|data-[a-z-]*(?:src|href)|srcset)=(?:"([^"]*)"|'([^']*)')/g;
const ID = /\s(?:id|name)=(?:"([^"]*)"|'([^']*)')/g;

/** Addresses within a style sheet. */
const IN_STYLE = /url\((['"]?)([^)'"]+)\1\)/g;

export interface Linked {
  /** Where the site stands: `/reports/`. */
  readonly base: string;
  /** With the base; '' where nobody says so. */
  readonly address: string;
}

/** Links that lead nowhere, each told once a page. Other sites are not asked. */
export function brokenLinks(files: readonly SiteFile[], site: Linked): Problem[] {
  const texts = new Map(files.filter(({ path }) => /\.(?:html|css|xml)$/.test(path)).map((file) => [file.path, textOf(file)]));
  const there = new Set(files.map(({ path }) => path));
  const ids = new Map<string, ReadonlySet<string>>();
  const idsOf = (path: string) => {
    const known = ids.get(path) ?? new Set([...(texts.get(path) ?? '').matchAll(ID)].map(([, a, b]) => plain(a ?? b ?? '')));
    ids.set(path, known);
    return known;
  };
  return [...texts].flatMap(([path, text]) => {
    const told = new Set<string>();
    return linksOf(path, text).flatMap(({ link, at }) => {
      const fault = told.has(link) ? undefined : faultOf(link, path, site, there, idsOf);
      if (fault === undefined) return [];
      told.add(link);
      const place = { file: `dist/${path}`, ...placeIn(text, at) };
      return [error('site-link', place, `\`${link}\` ${fault}`, { remedy: 'mend the link where it is written, and build again' })];
    });
  });
}

function linksOf(path: string, text: string): { link: string; at: number }[] {
  if (path.endsWith('.xml'))
    return [...text.matchAll(/<(?:loc|id|uri)>([^<]*)<|\shref="([^"]*)"/g)].map(({ 1: a, 2: b, index }) => ({
      link: plain(a ?? b ?? ''),
      at: index,
    }));
  if (path.endsWith('.css')) return [...text.matchAll(IN_STYLE)].map(({ 2: link = '', index }) => ({ link, at: index }));
  return [...text.matchAll(LINK)].flatMap(({ 0: whole, 1: a, 2: b, index }) => {
    const value = plain(a ?? b ?? '');
    const links = whole.trimStart().startsWith('srcset')
      ? value.split(/,\s+/).map((each) => each.trim().split(/\s/, 1)[0]!)
      : [value];
    return links.map((link) => ({ link, at: index + 1 }));
  });
}

function faultOf(
  link: string,
  from: string,
  { base, address }: Linked,
  there: ReadonlySet<string>,
  idsOf: (path: string) => ReadonlySet<string>,
): string | undefined {
  const here = new URL(`${base}${from.replace(/(?:^|(?<=\/))index\.html$/, '')}`, address || 'http://site.invalid');
  if (!URL.canParse(link, here)) return 'is no address';
  const to = new URL(link, here);
  if (to.protocol === 'http:' && to.origin !== here.origin) return 'leads to a host without encryption, which browsers warn of';
  if (to.origin !== here.origin) return undefined;
  const path = decodeURI(to.pathname);
  const root = decodeURI(base);
  if (!path.startsWith(root)) return `leads out of the folder that the site stands in, ${base}`;
  const below = path.slice(root.length);
  const file = below === '' || below.endsWith('/') ? `${below}index.html` : below;
  if (!there.has(file))
    return there.has(`${file}/index.html`) ? 'has no slash at its end, and would take a reader twice as long' : 'leads nowhere';
  const id = decodeURIComponent(to.hash.slice(1));
  // Tools keep their state behind the same sign; an id has no equals sign.
  if (id === '' || id.includes('=') || !file.endsWith('.html')) return undefined;
  return idsOf(file).has(id) ? undefined : 'names a part that its page does not have';
}

/** Text of an attribute, with the references of HTML that we print put back. */
function plain(text: string): string {
  const named: Readonly<Record<string, string>> = { amp: '&', quot: '"', lt: '<', gt: '>', apos: "'" };
  return text.replaceAll(/&(?:#x([0-9a-f]+)|#(\d+)|(amp|quot|lt|gt|apos));/gi, (_whole, hex, number, name) =>
    name ? named[name.toLowerCase()]! : String.fromCodePoint(hex ? Number.parseInt(hex, 16) : Number(number)),
  );
}
