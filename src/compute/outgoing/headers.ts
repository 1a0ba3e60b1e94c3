/** The headers that a host sends with the files of a site: what a page cannot say of itself. */

/** Headers of some of a site's files. */
export interface HeaderRule {
  /** Path below the base, `*` standing for any characters, slashes too. Capitals and small letters are the same. */
  readonly files: string;
  readonly set: Readonly<Record<string, string>>;
}

/** The file in which a site carries them, for hosts, for programs that put files on a host, and for our preview. */
export const HEADERS_FILE = 'headers.json';

export interface HeadersFile {
  readonly format: 1;
  /** The folder that the site stands in. */
  readonly base: string;
  /** Of two rules that set the same header, the later one counts. */
  readonly headers: readonly HeaderRule[];
}

/** Media types as they are registered (IANA), with their characters named where the type has a parameter for it. */
const TYPES: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  css: 'text/css; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  json: 'application/json',
  csv: 'text/csv; charset=utf-8',
  tsv: 'text/tab-separated-values; charset=utf-8',
  md: 'text/markdown; charset=utf-8',
  txt: 'text/plain; charset=utf-8',
  // Not registered: shown as what they are, text.
  log: 'text/plain; charset=utf-8',
  dat: 'text/plain; charset=utf-8',
  bib: 'text/plain; charset=utf-8',
  sh: 'text/plain; charset=utf-8',
  srt: 'text/plain; charset=utf-8',
  vtt: 'text/vtt; charset=utf-8',
  xml: 'application/xml',
  svg: 'image/svg+xml',
  png: 'image/png',
  jpg: 'image/jpeg',
  jpeg: 'image/jpeg',
  webp: 'image/webp',
  avif: 'image/avif',
  woff2: 'font/woff2',
  zip: 'application/zip',
  // RFC 6713.
  gz: 'application/gzip',
};

/**
 * All that our pages want of a host.
 *
 * `frame-ancestors` cannot stand in a meta tag (Content Security Policy, level 3, 3.3). `nosniff`: Fetch standard. The names of files in
 * `assets/` hold a digest of them, so that a browser may keep them (RFC 8246); all others are asked for again (RFC 9111, 5.2.2.4).
 */
export const HEADERS: readonly HeaderRule[] = [
  {
    files: '*',
    set: {
      'Content-Security-Policy': "frame-ancestors 'none'",
      'X-Content-Type-Options': 'nosniff',
      'Referrer-Policy': 'same-origin',
      'Cache-Control': 'no-cache',
    },
  },
  { files: 'assets/*', set: { 'Cache-Control': 'public, max-age=31536000, immutable' } },
  ...Object.entries(TYPES).map(([ending, type]) => ({ files: `*.${ending}`, set: { 'Content-Type': type } })),
  ...['notes.xml', 'corrections.xml'].map((files) => ({ files, set: { 'Content-Type': 'application/atom+xml' } })),
];

/** The text of `headers.json`. */
export function headersJson(base: string): string {
  const file: HeadersFile = { format: 1, base, headers: HEADERS };
  return `${JSON.stringify(file, null, 2)}\n`;
}

/** The headers of one file, by its path below the base. */
export function headersOf(path: string, rules: readonly HeaderRule[]): Readonly<Record<string, string>> {
  return Object.assign({}, ...rules.filter(({ files }) => matches(files, path)).map(({ set }) => set));
}

function matches(files: string, path: string): boolean {
  const parts = files.split('*').map((part) => part.replaceAll(/[\\^$.*+?()[\]{}|]/g, '\\$&'));
  return new RegExp(`^${parts.join('.*')}$`, 'is').test(path);
}
