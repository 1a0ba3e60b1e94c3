/** Links of notes to pages that the site does not have. */
import { error, type Problem } from '../problem.ts';
import { nearest } from '../register/names.ts';
import { notePath } from './pages/note.ts';
import type { ComputedNote } from './pages/parts.ts';
import type { Manifest } from './results.ts';

/** One error for each link of a note or script of the site that leads to no page and no file of it. */
export function deadLinks(notes: readonly ComputedNote[], { pages, files }: Pick<Manifest, 'pages' | 'files'>): Problem[] {
  const targets = new Set([...pages.map(({ path }) => path), ...files.map(({ path }) => path.replace(/index\.html$/, ''))]);
  return notes.flatMap((computed) => {
    const links = computed.written.links ?? [];
    return links.flatMap(({ href, place }) => {
      const path = targetOf(notePath(computed), href);
      if (path !== undefined && (targets.has(path) || targets.has(`${path}/`))) return [];
      const meant = nearest(path ?? href, targets);
      const found = `a link to \`${href}\`, which is no page of the site`;
      const remedy =
        meant === undefined ? 'correct the link, or publish the note that it leads to' : `did you mean the page \`${meant}\`?`;
      return [error('dead-link', place, found, { expected: 'a page or file that the site has', remedy })];
    });
  });
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
