/** Links of notes to pages that the site does not have. */
import { compareText, error, type Problem, warning } from '../../problem.ts';
import { nearest } from '../../register/values/names.ts';
import type { Manifest } from '../results.ts';
import type { ComputedNote } from './site-contents.ts';

/** A note or script whose links are judged. */
export interface Linking {
  readonly note: Pick<ComputedNote['note'], 'kind' | 'id' | 'status'>;
  readonly written: Pick<ComputedNote['written'], 'links'>;
  /** Beginnings of the paths that its publication would bring, where the site lacks them: its own pages, those of its runs. */
  readonly brings?: readonly string[];
}

/**
 * Each link that leads to no page and no file of the site: an error in what is published, a warning in what is not.
 *
 * @param elsewhere - pages of the site from which notes were unpacked: that they are missing here is nobody's mistake.
 */
export function deadLinks(
  notes: readonly Linking[],
  { pages, files }: Pick<Manifest, 'pages' | 'files'>,
  elsewhere: readonly string[] = [],
): Problem[] {
  const targets = new Set([
    ...pages.map(({ path }) => path),
    ...files.map(({ path }) => path.replace(/index\.html$/, '')),
    ...elsewhere,
  ]);
  const hidden = new Set(notes.filter(({ note }) => note.status !== 'published').map(pathOf));
  return notes.flatMap(({ note, written, brings = [] }) => {
    const report = note.status === 'published' ? error : warning;
    return (written.links ?? []).flatMap(({ href, place }) => {
      const path = targetOf(pathOf({ note }), href);
      if (path !== undefined && (targets.has(path) || targets.has(`${path}/`))) return [];
      if (path !== undefined && brings.some((start) => `${path}/`.startsWith(start))) return [];
      const unpublished = path !== undefined && [path, `${path}/`].some((each) => hidden.has(each));
      return [report('dead-link', place, ...wrong(href, unpublished ? 'unpublished' : nearest(path ?? href, targets)))];
    });
  });
}

/** Pages and files of the site that notes link to, each once. */
export function linksWithin(notes: readonly Linking[]): string[] {
  const paths = notes.flatMap(({ note, written }) =>
    (written.links ?? []).flatMap(({ href }) => targetOf(pathOf({ note }), href) ?? []),
  );
  return [...new Set(paths)].sort(compareText);
}

function pathOf({ note }: Pick<Linking, 'note'>): string {
  return `${note.kind}s/${note.id}/`;
}

/** What was found, expected and to be done; `meant` is the nearest page. */
function wrong(href: string, meant: string | undefined): [string, Pick<Problem, 'expected' | 'remedy'>] {
  const expected = 'a page or file that the site has';
  if (meant === 'unpublished')
    return [`a link to \`${href}\`, which is not published`, { expected, remedy: 'publish that one first, or take the link out' }];
  const remedy =
    meant === undefined ? 'correct the link, or publish the note that it leads to' : `did you mean the page \`${meant}\`?`;
  return [`a link to \`${href}\`, which is not a page of the site`, { expected, remedy }];
}

/** The path below the base that a link leads to from a page; undefined where it leaves the site. */
function targetOf(page: string, href: string): string | undefined {
  const base = 'http://site.invalid/';
  try {
    return decodeURI(new URL(href, base + page).pathname.slice(1));
  } catch {
    return undefined;
  }
}
