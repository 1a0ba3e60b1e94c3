/** How much a reader's browser has to fetch for a page. */
import { type Problem, warning } from '../../problem.ts';
import { pathIn, type SiteFile, textOf } from './site-files.ts';

/** Beyond this a page takes some ten seconds on a slow line (4 Mbit/s; our own measure, no source). */
const HEAVY_PAGE = 5 * 2 ** 20;
/** Hosts that build from a repository refuse larger files (common practice, no source). */
const LARGE_FILE = 95 * 2 ** 20;

export interface PageSize {
  readonly path: string;
  /** Of the page, with the styles, scripts, fonts and pictures that it loads at once. */
  readonly bytes: number;
}

/** Every page with its bytes, the heaviest first. */
export function pageSizes(files: readonly SiteFile[], base: string): PageSize[] {
  const sizes = new Map(files.map(({ path, bytes }) => [path, bytes.length]));
  const pages = files.filter(({ path }) => path.endsWith('.html'));
  return pages
    .map((page) => {
      const loaded = [...textOf(page).matchAll(/<(?:link|script|img)\b[^>]*?\s(?:href|src)="([^"]+)"/g)].flatMap(
        ([tag, link = '']) => (/^<link\b(?!.*rel="(?:stylesheet|preload|icon)")/.test(tag) ? [] : [pathOf(link, page.path, base)]),
      );
      return {
        path: page.path,
        bytes: page.bytes.length + [...new Set(loaded)].reduce((sum, path) => sum + (sizes.get(path) ?? 0), 0),
      };
    })
    .sort((a, b) => b.bytes - a.bytes || (a.path < b.path ? -1 : 1));
}

/** Pages and files that are larger than a reader or a host will like. */
export function largeOnes(files: readonly SiteFile[], base: string): Problem[] {
  const pages = pageSizes(files, base).filter(({ bytes }) => bytes > HEAVY_PAGE);
  const large = files.filter(({ bytes }) => bytes.length > LARGE_FILE);
  return [
    ...pages.map(({ path, bytes }) =>
      told(path, `this page loads ${megabytes(bytes)} MB`, HEAVY_PAGE, 'show fewer charts or pictures on it'),
    ),
    ...large.map(({ path, bytes }) =>
      told(
        path,
        `this file has ${megabytes(bytes.length)} MB`,
        LARGE_FILE,
        'say `elsewhere:` below `log:`, and keep it on a host for large files',
      ),
    ),
  ];
}

function told(path: string, found: string, most: number, remedy: string): Problem {
  return warning('site-size', { file: `dist/${path}`, line: 1, column: 1 }, found, {
    expected: `${megabytes(most)} MB at most`,
    remedy,
  });
}

/** "5.2", of 2^20 bytes. */
export function megabytes(bytes: number): string {
  return (bytes / 2 ** 20).toFixed(1);
}

function pathOf(link: string, from: string, base: string): string {
  const page = `http://site.invalid${base}${from}`;
  if (!URL.canParse(link, page)) return '';
  const to = new URL(link, page);
  return to.host === 'site.invalid' ? pathIn(to.pathname).slice(base.length) : '';
}
