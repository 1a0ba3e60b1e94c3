/** Links inside a printed site: each must lead to a file that is there, and to a part of the page that it names. */
import { error, type Problem, warning } from '../../problem.ts';
import { pathIn, placeIn, type SiteFile, textOf } from './site-files.ts';

/** What is read as text, though it may look like a tag: comments, scripts, styles. */
const NO_TAGS = /<!--.*?-->|(?<=<(script|style)\b[^>]*>).*?(?=<\/\1>)/gis;
/** A tag, with signs of any kind between its quotes. */
const TAG = /<[a-z](?:"[^"]*"|'[^']*'|[^'">])*>/gi;
/** Attributes that name another file. */
const LINK = /^(?:href|src|poster|data-[a-z-]*(?:src|href)|srcset)$/;
const ID = /^(?:id|name)$/;
const ATTRIBUTE = /\s([^\s"'<>/=]+)=(?:"([^"]*)"|'([^']*)')/g;

/** Addresses within a style sheet. */
const IN_STYLE = /url\((['"]?)([^)'"]+)\1\)/g;

export interface Linked {
  /** Where the site stands: `/reports/`. */
  readonly base: string;
  /** With the base; '' where nobody says so. */
  readonly address: string;
}

/** Links that lead nowhere, each told once a page. Other sites are not asked; a link to one without encryption is a warning. */
export function brokenLinks(files: readonly SiteFile[], site: Linked): Problem[] {
  const texts = new Map(files.filter(({ path }) => /\.(?:html|css|xml)$/.test(path)).map((file) => [file.path, textOf(file)]));
  const there = new Set(files.map(({ path }) => path));
  const ids = new Map<string, ReadonlySet<string>>();
  const idsOf = (path: string) => {
    const known = ids.get(path) ?? new Set(attributesOf(texts.get(path) ?? '', ID).map(({ value }) => value));
    ids.set(path, known);
    return known;
  };
  return [...texts].flatMap(([path, text]) => {
    const told = new Set<string>();
    return linksOf(path, text).flatMap(({ link, at }) => {
      if (told.has(link)) return [];
      const open = isUnencrypted(link, path, site);
      const fault = open ? 'leads to a host without encryption, which browsers warn of' : faultOf(link, path, site, there, idsOf);
      if (fault === undefined) return [];
      told.add(link);
      const place = { file: `dist/${path}`, ...placeIn(text, at) };
      return [
        (open ? warning : error)('site-link', place, `\`${link}\` ${fault}`, {
          remedy: 'mend the link where it is written, and build again',
        }),
      ];
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
  return attributesOf(text, LINK).flatMap(({ name, value, at }) => {
    const links = name === 'srcset' ? value.split(/,\s+/).map((each) => each.trim().split(/\s/, 1)[0]!) : [value];
    return links.map((link) => ({ link, at: at + 1 }));
  });
}

/** Attributes of the tags of a page, by the form of their names, and where each stands. */
function attributesOf(text: string, form: RegExp): { name: string; value: string; at: number }[] {
  const tags = text.replaceAll(NO_TAGS, (other) => ' '.repeat(other.length)).matchAll(TAG);
  return [...tags].flatMap((tag) =>
    [...tag[0].matchAll(ATTRIBUTE)].flatMap(({ 1: name = '', 2: a, 3: b, index }) =>
      form.test(name) ? [{ name, value: plain(a ?? b ?? ''), at: tag.index + index }] : [],
    ),
  );
}

/** The address of the page that a file is. */
function addressOf(path: string, { base, address }: Linked): URL {
  return new URL(`${base}${path.replace(/(?:^|(?<=\/))index\.html$/, '')}`, address || 'http://site.invalid');
}

function isUnencrypted(link: string, from: string, site: Linked): boolean {
  const here = addressOf(from, site);
  if (!URL.canParse(link, here)) return false;
  const to = new URL(link, here);
  return to.protocol === 'http:' && to.origin !== here.origin;
}

function faultOf(
  link: string,
  from: string,
  site: Linked,
  there: ReadonlySet<string>,
  idsOf: (path: string) => ReadonlySet<string>,
): string | undefined {
  const here = addressOf(from, site);
  if (!URL.canParse(link, here)) return 'is no address';
  const to = new URL(link, here);
  if (to.origin !== here.origin) return undefined;
  const path = pathIn(to.pathname);
  const root = pathIn(site.base);
  if (!path.startsWith(root)) return `leads out of the folder that the site stands in, ${site.base}`;
  const below = path.slice(root.length);
  const file = below === '' || below.endsWith('/') ? `${below}index.html` : below;
  if (!there.has(file))
    return there.has(`${file}/index.html`) ? 'has no slash at its end, which costs the reader a redirect' : 'leads nowhere';
  const id = idIn(to.hash);
  // Tools keep their state behind the same sign; an id has no equals sign.
  // `#top` is the top of any page (HTML, 7.4.6.4).
  if (id === '' || id.includes('=') || id.toLowerCase() === 'top' || !file.endsWith('.html')) return undefined;
  return idsOf(file).has(id) ? undefined : 'names a part that its page does not have';
}

function idIn(hash: string): string {
  const id = hash.slice(1);
  try {
    return decodeURIComponent(id);
  } catch {
    return id;
  }
}

/** Text of an attribute, with the references of HTML that we print put back. */
function plain(text: string): string {
  const named: Readonly<Record<string, string>> = { amp: '&', quot: '"', lt: '<', gt: '>', apos: "'" };
  return text.replaceAll(/&(?:#x([0-9a-f]+)|#(\d+)|(amp|quot|lt|gt|apos));/gi, (_whole, hex, number, name) =>
    name ? named[name.toLowerCase()]! : String.fromCodePoint(hex ? Number.parseInt(hex, 16) : Number(number)),
  );
}
