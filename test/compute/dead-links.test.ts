import { describe, expect, it } from 'vitest';
import { deadLinks } from '../../src/compute/dead-links.ts';

const place = { file: 'content/notes/a.md', line: 3, column: 7 };

/** Problems of one note `notes/a/` with a link. */
function problemsOf(href: string, status: 'draft' | 'published' = 'published') {
  const note = { note: { kind: 'note', id: 'a', status }, written: { links: [{ href, place }] }, brings: ['runs/own/'] } as const;
  const draft = { note: { kind: 'note', id: 'later', status: 'draft' }, written: {} } as const;
  const pages = ['', 'notes/a/', 'notes/b/', 'method/'].map((path) => ({ kind: 'note' as const, path, blob: '' }));
  const files = ['notes/b/ledger.json', 'notes/old/index.html'].map((path) => ({ path, blob: '' }));
  return deadLinks([note, draft], { pages, files });
}

describe('compute/dead-links', () => {
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
        found: 'a link to `../bb/`, which is no page of the site',
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
