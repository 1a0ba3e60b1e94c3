/** What an author may write into `publication({ … })`, and what is wrong with what was written. */

import type { Licence } from '../../register/register.ts';
import { listedLicence } from '../../register/values/licence.ts';
import { meant } from '../../register/values/names.ts';
import { accentFault } from './accent.ts';

/** The parts of a site that its masthead leads to. */
const SECTIONS = ['notes', 'devices', 'runs', 'compare', 'method', 'search'] as const;
export type Section = (typeof SECTIONS)[number];

/** A link of the author's own in the masthead. */
export interface OwnLink {
  readonly label: string;
  /** A whole https address, or the path of a page of this site: `notes/my-note/`. */
  readonly to: string;
}

/** The publication as its author describes it. */
export interface SiteOptions {
  /** The publication's name. */
  readonly title: string;
  /** One line that says what it is. */
  readonly byline?: string;
  /** The address that readers use: `https://bench.example`. */
  readonly site?: string;
  /** The folder that it stands in: `/`, or `/reports/`. */
  readonly base?: string;
  /** How readers reach you: a mail address, or an https address. It stands at the foot of every page. */
  readonly contact?: string;
  /** How your words, and the data of your runs, may be used where a file does not say so itself: ids of the SPDX licence list. */
  readonly licence?: { readonly words?: string; readonly data?: string };
  /** Who paid for the devices and the work, in a sentence. It stands at the foot of every page. */
  readonly funding?: string;
  /** A Markdown file below content/ that is printed as the page about this publication: `about.md`. */
  readonly about?: string;
  /** What the masthead leads to, in order: names of sections, `about`, and links of your own. */
  readonly navigation?: readonly (Section | 'about' | OwnLink)[];
  /** The colour of links on light and on dark paper, as `#1d4f7c`. It must stand out from the paper at least as 4.5 to 1. */
  readonly accent?: { readonly light?: string; readonly dark?: string };
  /** Words that `check-site` takes for private, and that may go out all the same. */
  readonly harmless?: readonly string[];
  /** Prints the user's guide as a part of the site; left out, only dev shows it. */
  readonly guide?: boolean;
}

/** The same, complete, as pages and files use it. */
export interface SiteSettings {
  readonly title: string;
  readonly byline: string;
  readonly contact: string;
  /** Where the contact leads; '' without one. */
  readonly reach: string;
  readonly licence: { readonly words?: Licence; readonly data?: Licence };
  readonly funding: string;
  /** Path below content/; '' where there is no such page. */
  readonly about: string;
  readonly navigation: readonly (Section | 'about' | OwnLink)[];
  readonly accent: { readonly light?: string; readonly dark?: string };
  readonly harmless: readonly string[];
  readonly guide: boolean;
}

/** Something wrong with one option. `path` leads to it: `['licence', 'data']`. */
export interface OptionFault {
  readonly path: readonly string[];
  readonly rule: 'unknown-option' | 'bad-option' | 'accent-contrast' | 'unknown-licence';
  readonly found: string;
  readonly expected: string;
  readonly remedy?: string;
}

type Reading = { readonly [K in keyof Required<SiteOptions>]: (value: unknown, path: readonly string[]) => OptionFault[] };

/** Steps of an address that need no escape (RFC 3986, 2.3), none of them empty or leading up: `//host/` would be another site. */
const FOLDER = /^\/(?:(?!\.\.?(?:\/|$))[\w.~-]+\/)*(?:(?!\.\.?$)[\w.~-]+)?$/;

/** What may stand behind each option. */
const READING: Reading = {
  title: words('the name of the publication'),
  byline: words('one line that says what the publication is'),
  site: (value, path) =>
    isSite(value) ? [] : [bad(path, value, "an address without a folder, as 'https://bench.example'; the folder is `base`")],
  base: (value, path) =>
    typeof value === 'string' && FOLDER.test(value)
      ? []
      : [bad(path, value, "a folder that begins with a slash, of letters, digits and `-._~`, as '/' or '/reports/'")],
  contact: (value, path) =>
    contactAddress(value) === '' ? [bad(path, value, "a mail address or an https address, as 'me@bench.example'")] : [],
  licence: inside({ words: licence, data: licence }),
  funding: words('a sentence that says who paid'),
  about: (value, path) =>
    isMarkdownPath(value) ? [] : [bad(path, value, "the path of a Markdown file below content/, as 'about.md'")],
  navigation,
  accent: inside({ light: (value, path) => accentOf('light', value, path), dark: (value, path) => accentOf('dark', value, path) }),
  harmless: (value, path) =>
    Array.isArray(value) && value.every((each) => typeof each === 'string' && each.trim() !== '')
      ? []
      : [bad(path, value, "a list of words, as ['192.168.1.20']")],
  guide: (value, path) => (typeof value === 'boolean' ? [] : [bad(path, value, 'true or false')]),
};

/** The names of all options, in the order of the guide. */
export const OPTIONS = Object.keys(READING) as readonly (keyof SiteOptions)[];

/** All that is wrong with options as an author wrote them. */
export function optionFaults(options: Readonly<Record<string, unknown>>): OptionFault[] {
  const faults = inside(READING, 'a publication')(options, []);
  if (options.title === undefined)
    faults.unshift({
      path: [],
      rule: 'bad-option',
      found: 'the publication has no `title`',
      expected: "its name, as `title: 'My bench'`",
    });
  if (Array.isArray(options.navigation) && options.navigation.includes('about') && options.about === undefined)
    faults.push({
      path: ['navigation'],
      rule: 'bad-option',
      found: '`navigation` names `about`, and there is no option `about`',
      expected: "the file that it shows, as `about: 'about.md'`",
    });
  return faults;
}

/** Options that hold no fault, complete; of those that do, what can be used. */
export function settingsOf(options: Readonly<Record<string, unknown>>): SiteSettings {
  const broken = new Set(optionFaults(options).map(({ path }) => path[0]));
  const {
    title = '',
    byline = '',
    contact = '',
    licence = {},
    funding = '',
    about = '',
    accent = {},
    harmless = [],
    guide = false,
    ...rest
  } = Object.fromEntries(Object.entries(options).filter(([name]) => !broken.has(name))) as Partial<SiteOptions>;
  const [ofWords, ofData] = [licence.words, licence.data].map((id) => (id === undefined ? undefined : listedLicence(id)));
  return {
    ...{ title, byline, contact, reach: contactAddress(contact), funding, about, accent, harmless, guide },
    licence: { ...(ofWords && { words: ofWords }), ...(ofData && { data: ofData }) },
    navigation: rest.navigation ?? [...SECTIONS, ...(about === '' ? [] : (['about'] as const))],
  };
}

/** Where a contact leads: `mailto:` for a mail address; '' where it is neither that nor an https address. */
function contactAddress(contact: unknown): string {
  if (typeof contact !== 'string') return '';
  if (/^[^\s@:/]+@[^\s@:/]+\.[^\s@:/]+$/.test(contact)) return `mailto:${contact}`;
  return isHttps(contact) ? contact : '';
}

function words(what: string) {
  return (value: unknown, path: readonly string[]) =>
    typeof value === 'string' && value.trim() !== '' ? [] : [bad(path, value, what)];
}

/** Reads each option of an object by its own reader; a name that there is not is an error with the nearest that there is. */
function inside(readers: Readonly<Record<string, (value: unknown, path: readonly string[]) => OptionFault[]>>, whole?: string) {
  const names = Object.keys(readers);
  return (value: unknown, path: readonly string[]): OptionFault[] => {
    if (typeof value !== 'object' || value === null || Array.isArray(value))
      return [bad(path, value, `{ ${names.map((name) => `${name}: …`).join(', ')} }`)];
    return Object.entries(value).flatMap(([name, each]) => {
      if (each === undefined) return [];
      const reader = Object.hasOwn(readers, name) ? readers[name] : undefined;
      if (reader) return reader(each, [...path, name]);
      const found = `${whole ?? `\`${path.at(-1)}\``} has no option \`${name}\``;
      return [
        {
          path: [...path, name],
          rule: 'unknown-option',
          found,
          expected: names.join(', '),
          remedy: meant(name, names).remedy ?? 'remove it',
        },
      ];
    });
  };
}

function licence(value: unknown, path: readonly string[]): OptionFault[] {
  if (typeof value === 'string' && listedLicence(value)) return [];
  return [{ ...bad(path, value, 'an id of the SPDX licence list, as CC-BY-4.0 or CC0-1.0'), rule: 'unknown-licence' }];
}

function navigation(value: unknown, path: readonly string[]): OptionFault[] {
  const names = [...SECTIONS, 'about'];
  const expected = `a list of ${names.join(', ')}, and links as { label: 'Our shop of parts', to: 'https://parts.example' }`;
  if (!Array.isArray(value)) return [bad(path, value, expected)];
  return value.flatMap((entry): OptionFault[] => {
    if (typeof entry === 'string') return names.includes(entry) ? [] : [{ ...bad(path, entry, expected), ...meant(entry, names) }];
    const { label, to } = (entry ?? {}) as Partial<Record<keyof OwnLink, unknown>>;
    const leads = typeof to === 'string' && (isHttps(to) || /^(?:[\w-]+\/)*(?:[\w.-]+)?(?:#[\w.-]+)?$/.test(to));
    return typeof label === 'string' && label.trim() !== '' && leads ? [] : [bad(path, entry, expected)];
  });
}

function accentOf(look: 'light' | 'dark', value: unknown, path: readonly string[]): OptionFault[] {
  const expected = "a colour as six digits, as '#1d4f7c'";
  if (typeof value !== 'string' || !/^#[0-9a-f]{6}$/i.test(value)) return [bad(path, value, expected)];
  const fault = accentFault(look, value);
  return fault === undefined ? [] : [{ path, rule: 'accent-contrast', ...fault }];
}

function bad(path: readonly string[], value: unknown, expected: string): OptionFault {
  return { path, rule: 'bad-option', found: `\`${path.join('.')}\` is ${shown(value)}`, expected };
}

function shown(value: unknown): string {
  const text = JSON.stringify(value) ?? typeof value;
  return text.length <= 60 ? text : `${text.slice(0, 60)}…`;
}

function isHttps(text: string): boolean {
  const url = URL.canParse(text) ? new URL(text) : undefined;
  return url?.protocol === 'https:' && url.username === '' && url.password === '';
}

function isSite(value: unknown): boolean {
  if (typeof value !== 'string' || !URL.canParse(value)) return false;
  const { protocol, pathname, search, hash, username } = new URL(value);
  return /^https?:$/.test(protocol) && pathname === '/' && search + hash + username === '';
}

function isMarkdownPath(value: unknown): boolean {
  return typeof value === 'string' && /^[^./\\][^/\\]*\.md$/.test(value);
}
