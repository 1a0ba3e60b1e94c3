import { describe, expect, it } from 'vitest';
import { deadLinks, linksWithin } from '../../../src/compute/contents/dead-links.ts';

const place = { file: 'content/notes/a.md', line: 3, column: 7 };

/** Problems of one note `notes/a/` with a link. */
function problemsOf(href: string, status: 'draft' | 'published' = 'published') {
  const note = { note: { kind: 'note', id: 'a', status }, written: { links: [{ href, place }] }, brings: ['runs/own/'] } as const;
  const draft = { note: { kind: 'note', id: 'later', status: 'draft' }, written: {} } as const;
  const pages = ['', 'notes/a/', 'notes/b/', 'method/'].map((path) => ({ kind: 'note' as const, path, blob: '' }));
  const files = ['notes/b/ledger.json', 'notes/old/index.html'].map((path) => ({ path, blob: '' }));
  return deadLinks([note, draft], { pages, files });
}

describe('compute/contents/dead-links', () => {
  it.each(['../b/', '../b', '../b/#part', '../../method/#energy', '../b/ledger.json', '/notes/b/', '../old/', '../../'])(
    'finds %s',
    (href) => {
      expect(problemsOf(href)).toEqual([]);
    },
  );

  it('locates a link to a page that is not there, with the nearest one', () => {
    expect(problemsOf('../bb/')).toEqual([
      {
        severity: 'error',
        rule: 'dead-link',
        place,
        found: 'a link to `../bb/`, which is not a page of the site',
        expected: 'a page or file that the site has',
        remedy: 'did you mean the page `notes/b/`?',
      },
    ]);
    expect(problemsOf('../%E0%A4%A/')).toHaveLength(1);
  });

  it('warns where the note is not published itself, and not of what its publication would bring', () => {
    expect(problemsOf('../bb/', 'draft')).toEqual([expect.objectContaining({ severity: 'warning', rule: 'dead-link', place })]);
    expect(problemsOf('../../runs/own/figures.json', 'draft')).toEqual([]);
    expect(problemsOf('../../runs/other/', 'draft')).toHaveLength(1);
  });

  it('names a page that is there and not published', () => {
    expect(problemsOf('../later/')).toEqual([
      expect.objectContaining({ severity: 'error', found: 'a link to `../later/`, which is not published' }),
    ]);
  });
});

it("compute/dead-links: pages of the site from which a note was unpacked are missing by nobody's mistake", () => {
  const linking = (href: string) => ({
    note: { kind: 'note' as const, id: 'x', status: 'published' as const },
    written: { links: [{ href, place: { file: 'content/notes/x.md', line: 1, column: 1 } }] },
  });
  const notes = [linking('../y/'), linking('../../runs/a/figures.json'), linking('../y/')];
  expect(linksWithin(notes)).toEqual(['notes/y/', 'runs/a/figures.json']);
  expect(deadLinks(notes, { pages: [], files: [] })).toHaveLength(3);
  expect(deadLinks(notes, { pages: [], files: [] }, linksWithin(notes))).toEqual([]);
});
