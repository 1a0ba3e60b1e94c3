import { describe, expect, it } from 'vitest';
import { deadLinks } from '../../src/compute/dead-links.ts';
import type { ComputedNote } from '../../src/compute/pages/parts.ts';

const place = { file: 'content/notes/a.md', line: 3, column: 7 };

/** Problems of one note `notes/a/` with a link. */
function problemsOf(href: string) {
  const note = { note: { kind: 'note', id: 'a' }, written: { links: [{ href, place }] } } as unknown as ComputedNote;
  const pages = ['', 'notes/a/', 'notes/b/', 'method/'].map((path) => ({ kind: 'note' as const, path, blob: '' }));
  const files = ['notes/b/ledger.json', 'notes/old/index.html'].map((path) => ({ path, blob: '' }));
  return deadLinks([note], { pages, files });
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
});
